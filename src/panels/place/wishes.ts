import type { PlaceRule } from '../../model/place/placeSettings';
import type { Alternative } from '../../model/place/variants';

/** What is asked for in this sheet, by part. */
export interface Wishes {
  readonly rules: Readonly<Record<string, PlaceRule>>;
  /** What else may do a part's work. */
  readonly instead: Readonly<Record<string, readonly Alternative[]>>;
}
