import type { Vec3 } from '../../engine/geometry/types';
import type { Aircraft } from '../document/types';
import { formatLength } from '../units';
import type { Say } from '../words/say';
import type { Marks } from './marks';
import type { Numbered } from './numbered';
import type { SheetView } from './projection';

/** What every view is drawn from. */
export interface ViewInput {
  readonly aircraft: Aircraft;
  readonly things: readonly Numbered[];
  readonly marks: Marks;
  readonly say: Say;
  /** Where stations are counted from, amid a sentence. */
  readonly from: string;
}

const axisOf: Readonly<Record<SheetView, 0 | 1 | 2>> = { side: 0, top: 1, front: 2 };

/** What a view’s figures are: the station from the reference point, the buttline, the waterline. */
export function figureOf(cgMm: Vec3, view: SheetView, { units, fromMm }: Say): string {
  const axis = axisOf[view];
  return formatLength(cgMm[axis] - (axis === 0 ? fromMm : 0), units, { fine: true, unit: false });
}
