import type { Vec3 } from '../../engine/geometry/types';
import type { Around } from '../../engine/place/leadShares';
import { putAt } from '../../engine/place/settlePlaces';
import type { PlaceProblem } from '../../engine/place/types';
import { itemById } from '../document/edit';
import type { Aircraft, Part } from '../document/types';
import { applyArrangement, withParts } from './applyArrangement';
import type { Ground } from './climb';
import { correctedProblem } from './correctedProblem';
import { fitRefusals, lostWaysIn } from './fitRefusals';

/** What a climb asks of an aircraft, with the ballast that was taken out of it first. */
export function groundOf(
  aircraft: Aircraft,
  downs: readonly Vec3[],
  emptied: readonly Part[],
  leftMs: () => number,
): Ground {
  const before = withParts(aircraft, emptied);
  const after = (problem: PlaceProblem, places: Around, gramsG: readonly number[]) =>
    applyArrangement(aircraft, problem, putAt(problem, places, gramsG), emptied);
  return {
    refusals: (problem, places, gramsG) => {
      const there = after(problem, places, gramsG);
      const said = fitRefusals(before, there);
      return said.length > 0 ? said : lostWaysIn(before, there, true);
    },
    corrected: (problem, places, gramsG) =>
      correctedProblem(aircraft, problem, putAt(problem, places, gramsG), downs, emptied),
    isOfFile: (id) => isOfFile(aircraft, id),
    leftMs,
  };
}

/** Whether an id is that of something in the file. Pieces of structure are named after their element. */
export const isOfFile = (aircraft: Aircraft, id: string): boolean =>
  itemById(aircraft, id) !== undefined ||
  aircraft.structure.some((element) => id.startsWith(element.id)) ||
  (aircraft.bays ?? []).some((bay) => bay.id === id);
