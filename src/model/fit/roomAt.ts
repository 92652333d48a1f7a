import type { Stretch, Vec3 } from '../../engine/geometry/types';
import { itemById, placeItem } from '../document/edit';
import type { Aircraft } from '../document/types';
import { newProblems, wholeFit } from './wholeFit';

/** Whether an item can stand there without making the fit of anything worse, in any load state. Its origin, mm. */
export function hasRoomAt(aircraft: Aircraft, itemId: string, positionMm: Vec3): boolean {
  const after = wholeFit(placeItem(aircraft, itemId, positionMm));
  return newProblems(wholeFit(aircraft), after).length === 0 && !worseOff(aircraft, itemId, after);
}

/**
 * Whether the item itself would stand badly there. What it does wrong now it may do no longer: a place that is offered
 * is a good one.
 */
function worseOff(aircraft: Aircraft, itemId: string, after: ReturnType<typeof wholeFit>): boolean {
  const problems = after.byId.get(itemId) ?? [];
  return itemById(aircraft, itemId) === undefined || problems.some(({ severity }) => severity === 'bad');
}

/** Steps of the search, as a share of how far away it has come: at first every millimetre. */
const stepShare = 0.1;

/**
 * The station nearest to the wanted one, in one of some stretches, at which an item has room with its height and
 * buttline as they are, on whole millimetres. Looks further apart the further away it is: a gap narrower than a tenth
 * of its distance may be missed. Null when none was found.
 */
export function nearestRoom(
  aircraft: Aircraft,
  itemId: string,
  stretches: readonly Stretch[],
  wantedMm: number,
): number | null {
  const item = itemById(aircraft, itemId);
  if (!item) return null;
  const [, y, z] = item.positionMm;
  const wanted = Math.round(wantedMm);
  const free = (mm: number) =>
    stretches.some(({ fromMm, toMm }) => mm >= fromMm && mm <= toMm) &&
    hasRoomAt(aircraft, itemId, [mm, y, z]);
  const ends = stretches.flatMap(({ fromMm, toMm }) => [fromMm, toMm]);
  const furthest = Math.max(0, ...ends.map((mm) => Math.abs(mm - wanted)));
  let before = 0;
  for (let away = 0; away <= furthest; away += Math.max(1, Math.floor(away * stepShare))) {
    const way = [-1, 1].find((side) => free(wanted + side * away));
    if (way !== undefined) return nearer(free, wanted, way * away, way * before);
    before = away;
  }
  return null;
}

/** Back towards the wanted station for as long as there is room. */
function nearer(free: (mm: number) => boolean, wanted: number, foundAway: number, lastAway: number): number {
  const back = Math.sign(lastAway - foundAway);
  let away = foundAway;
  while (away !== lastAway && away + back !== lastAway && free(wanted + away + back)) away += back;
  return wanted + away;
}
