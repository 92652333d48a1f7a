import type { PlaceRule } from '../../model/place/placeSettings';

/** What is asked for in this sheet, by part. */
export interface Wishes {
  readonly rules: Readonly<Record<string, PlaceRule>>;
  readonly mayTurn: readonly string[];
}
