import type { Vec3 } from '../../engine/geometry/types';
import { perObjects } from '../../engine/memory/memory';
import type { Aircraft } from '../document/types';
import { clashesIn, clearances } from './clearances';

/** Two items in one place: which other, and the shortest way clear of it. */
export interface Clash {
  readonly otherId: string;
  readonly otherName: string;
  /** Move the item so to clear it, mm. */
  readonly clearByMm: Vec3;
  readonly depthMm: number;
}

/** What one part or tank runs into among parts, tanks and structure, deepest first. Hulls are not counted. */
export const clashesOf = perObjects((aircraft: Aircraft, itemId: string): readonly Clash[] =>
  clashesIn(clearances(aircraft, itemId)).flatMap(({ id, name, distanceMm, clearByMm }) =>
    clearByMm ? [{ otherId: id, otherName: name, clearByMm, depthMm: -distanceMm }] : [],
  ),
);
