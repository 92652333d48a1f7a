import type { Vec3 } from '../../engine/geometry/types';
import { itemExtent } from '../airframe/extent';
import { itemById, placeItem, removeItem } from '../document/edit';
import type { Aircraft } from '../document/types';
import { hullMiddleAt } from './hullMiddle';
import { newProblems, wholeFit } from './wholeFit';

/** A new item in its place; `free` is false where no free place was found and it stands where it was wanted. */
export interface SetDown {
  readonly aircraft: Aircraft;
  readonly free: boolean;
}

/** Steps away from what is wanted, mm, and how much they grow with the distance, as a share of it. */
const STEP_MM = 5;
const GROWTH = 0.12;
/** No further away than this, mm. */
const FURTHEST_MM = 4000;
/** How far off the middle of the hull is tried, as shares of the room between the item and the hull's box. */
const OFFS: readonly (readonly [across: number, up: number])[] = [
  [0, 0],
  [0, -0.5],
  [0, -0.9],
  [0, 0.5],
  [0.5, 0],
  [-0.5, 0],
  [0.8, -0.5],
  [-0.8, -0.5],
];

/**
 * Puts a new part or tank down in the first free place at or near the station it is wanted at, mm: along the hull's
 * middle first, then lower, higher and to the sides of it; without a hull, along the line it stands on. Free means that
 * nothing that fitted before no longer fits, in any load state, and that the item itself fits. The search goes in steps that
 * grow with the distance and passes over places where the boxes around two items meet, so that a snug or a narrow gap may
 * be missed.
 */
export function setDown(aircraft: Aircraft, itemId: string, wantedMm: number): SetDown {
  const item = itemById(aircraft, itemId);
  if (!item) return { aircraft, free: false };
  const before = wholeFit(removeItem(aircraft, itemId));
  const wanted = withOriginAt(aircraft, itemId, wantedMm);
  let atMm = 0;
  while (atMm <= FURTHEST_MM) {
    for (const way of atMm === 0 ? [1] : [-1, 1]) {
      const free = freeAt(aircraft, itemId, wantedMm + way * atMm, before);
      if (free) return { aircraft: free, free: true };
    }
    atMm += Math.max(STEP_MM, Math.round(atMm * GROWTH));
    if (beyondAll(aircraft, wantedMm, atMm)) break;
  }
  return { aircraft: wanted, free: false };
}

function freeAt(
  aircraft: Aircraft,
  itemId: string,
  stationMm: number,
  before: ReturnType<typeof wholeFit>,
): Aircraft | null {
  for (const positionMm of candidates(aircraft, itemId, stationMm)) {
    const after = placeItem(aircraft, itemId, positionMm);
    if (boxesMeet(after, itemId)) continue;
    if (newProblems(before, wholeFit(after)).length === 0) return after;
  }
  return null;
}

/** Whether its box meets another item's: cheap to ask, and what lies so close is hardly a free place. */
function boxesMeet(aircraft: Aircraft, itemId: string): boolean {
  const item = itemById(aircraft, itemId);
  if (!item) return false;
  const extent = itemExtent(item);
  return [...aircraft.parts, ...aircraft.tanks].some((other) => {
    if (other.id === itemId) return false;
    const box = itemExtent(other);
    return ([0, 1, 2] as const).every(
      (axis) => extent.minMm[axis] < box.maxMm[axis] && box.minMm[axis] < extent.maxMm[axis],
    );
  });
}

/** Origins to try at a station, whole millimetres. */
function candidates(aircraft: Aircraft, itemId: string, stationMm: number): Vec3[] {
  const item = itemById(aircraft, itemId);
  if (!item) return [];
  const hull = hullMiddleAt(aircraft, stationMm);
  const [, y, z] = item.positionMm;
  if (!hull) return anyHull(aircraft) ? [] : [[Math.round(stationMm), y, z]];
  const { minMm, maxMm } = itemExtent(item);
  const room = (axis: 1 | 2, sizeMm: number) => (sizeMm - (maxMm[axis] - minMm[axis])) / 2;
  const [across, up] = [room(1, hull.widthMm), room(2, hull.heightMm)];
  if (across < 0 || up < 0) return [];
  return OFFS.map(([offY, offZ]) => [
    Math.round(stationMm),
    Math.round(hull.buttlineMm + offY * across),
    Math.round(hull.waterlineMm + offZ * up),
  ]);
}

const anyHull = ({ structure }: Aircraft) => structure.some(({ kind }) => kind === 'fuselage');

function withOriginAt(aircraft: Aircraft, itemId: string, stationMm: number): Aircraft {
  const item = itemById(aircraft, itemId);
  return item
    ? placeItem(aircraft, itemId, [Math.round(stationMm), item.positionMm[1], item.positionMm[2]])
    : aircraft;
}

/** Whether there is no hull any more so far away on either side. */
function beyondAll(aircraft: Aircraft, wantedMm: number, awayMm: number): boolean {
  const stations = aircraft.structure.flatMap((piece) =>
    piece.kind === 'fuselage' ? piece.sections.map(({ stationMm }) => stationMm) : [],
  );
  return (
    stations.length > 0 &&
    wantedMm - awayMm < Math.min(...stations) &&
    wantedMm + awayMm > Math.max(...stations)
  );
}
