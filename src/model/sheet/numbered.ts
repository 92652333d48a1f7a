import type { Vec3 } from '../../engine/geometry/types';
import { perObject } from '../../engine/memory/memory';
import { hullsAround, itemSolid } from '../airframe/solids';
import { type Item, itemById } from '../document/edit';
import type { Aircraft } from '../document/types';
import { manifestRows } from '../words/manifestRows';

/** A part or tank with the number that it has throughout the sheet. */
export interface Numbered {
  readonly number: number;
  readonly id: string;
  readonly name: string;
  readonly item: Item;
  /** Its own mass, a tank’s empty, g. */
  readonly massG: number;
  /** Its own CG; where it weighs nothing, its origin. */
  readonly cgMm: Vec3;
  /** It stands in a hull, by its middle. */
  readonly inHull: boolean;
}

/** Tanks and parts, numbered in the order of the list of what is aboard. */
export const numbered = perObject((aircraft: Aircraft): readonly Numbered[] =>
  manifestRows(aircraft)
    .filter(({ group }) => group === 'tank' || group === 'part')
    .flatMap(({ id, name, massG, cgMm }, at): readonly Numbered[] => {
      const item = itemById(aircraft, id);
      if (!item) return [];
      const inHull = hullsAround(aircraft, itemSolid(item)).length > 0;
      return [{ number: at + 1, id, name, item, massG, cgMm: cgMm ?? item.positionMm, inHull }];
    }),
);
