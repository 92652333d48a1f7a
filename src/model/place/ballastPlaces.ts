import type { Vec3 } from '../../engine/geometry/types';
import type { BallastBody, BallastSpot, Obstacle } from '../../engine/place/types';
import { partBody } from '../airframe/bodies';
import { itemExtent } from '../airframe/extent';
import { hulls, type NamedHull } from '../airframe/solids';
import { wingTip } from '../airframe/wingTip';
import type { Aircraft, BallastSpotItem, Part } from '../document/types';
import { boxesMeet } from './ballastFree';
import { acrossAt, hullStations } from './hullRoom';

/** g/mm³; handbook values, from memory. */
export const METAL_G_PER_MM3 = { lead: 0.01134, brass: 0.0085, steel: 0.00785 } as const;

/**
 * Ballast goes this far inside the ends of the hull and of the wing, mm, and further in steps where it has no room for a
 * fair stack there, so far from what is beside it.
 */
const INSIDE_END_MM = 30;
const FURTHER_MM = 5;
const FARTHEST_IN_MM = 120;
const FAIR_G = 150;
const CLEAR_MM = 3;
const USUAL = { stepG: 1, mostG: 500 } as const;
/** The largest stack that is looked for, mm, and the strip that goes into a wing tip. */
const LONGEST_MM = 60;
const WIDEST_MM = 40;
const NARROWEST_MM = 8;
const SLAB = { lengthMm: 60, widthMm: 24, heightMm: 10 } as const;
const STRIP_WIDE_MM = 12;

/** Where ballast is usually put: both ends of the hull, its floor behind the nose, and both tips where the lateral balance may need it. */
export function usualSpots(aircraft: Aircraft, emptied: readonly Part[] = []): BallastSpotItem[] {
  const spots: BallastSpotItem[] = [];
  const [hull] = hulls(aircraft);
  if (hull) {
    const { fromMm, toMm } = hullStations(hull);
    spots.push({
      id: 'nose',
      name: 'Nose',
      ...endOf(aircraft, hull, fromMm + INSIDE_END_MM, 1, emptied),
      ...USUAL,
    });
    const floor = floorOf(aircraft, hull, emptied);
    if (floor) spots.push({ id: 'floor', name: 'Nose floor', positionMm: floor, ...USUAL, ...SLAB });
    spots.push({
      id: 'tail',
      name: 'Tail',
      ...endOf(aircraft, hull, toMm - INSIDE_END_MM, -1, emptied),
      ...USUAL,
    });
  }
  for (const side of ['left', 'right'] as const) {
    const tip = wingTip(aircraft, side, STRIP_WIDE_MM);
    if (!tip) continue;
    const named = { id: `${side}-tip`, name: side === 'left' ? 'Left tip' : 'Right tip' };
    spots.push({ ...named, positionMm: tip.atMm, ...USUAL, ...tip.roomMm, widthMm: STRIP_WIDE_MM });
  }
  return spots;
}

/** A spot near an end of a hull, as near as there is room for a fair stack beside what stands there; else for the most. */
function endOf(
  { parts }: Aircraft,
  hull: NamedHull,
  stationMm: number,
  inward: 1 | -1,
  emptied: readonly Part[],
): { readonly positionMm: Vec3 } {
  const inTheWay = [...parts, ...emptied].map(itemExtent);
  const at = (x: number): Vec3 => {
    const near = sectionNear(hull, x);
    return [x, hull.pose.positionMm[1] + near.centreYMm, hull.pose.positionMm[2] + near.centreZMm];
  };
  let best = { place: at(stationMm), massG: 0 };
  for (let furtherMm = 0; furtherMm <= FARTHEST_IN_MM; furtherMm += FURTHER_MM) {
    const place = at(stationMm + inward * furtherMm);
    const room = stackIn(hull, place);
    const massG = room ? holdsG(place, room, inTheWay) : 0;
    if (massG > best.massG) best = { place, massG };
    if (massG >= FAIR_G) break;
  }
  return { positionMm: best.place };
}

/** The floor is felt in such steps, along and up, mm, over this share of the hull from its nose. */
const FLOOR_MM = { along: 5, up: 2, share: 0.4 } as const;

/** As far forward as a flat slab lies in a hull with nothing in its room: under what goes in and out above it. */
function floorOf({ parts, tanks }: Aircraft, hull: NamedHull, emptied: readonly Part[]): Vec3 | null {
  const inTheWay = [...parts, ...tanks, ...emptied].map(itemExtent);
  const { fromMm, toMm } = hullStations(hull);
  const [half, lastMm] = [SLAB.lengthMm / 2, fromMm + FLOOR_MM.share * (toMm - fromMm)];
  for (let x = fromMm + INSIDE_END_MM + half; x <= lastMm; x += FLOOR_MM.along) {
    const near = sectionNear(hull, x);
    const [y, middle] = [hull.pose.positionMm[1] + near.centreYMm, hull.pose.positionMm[2] + near.centreZMm];
    for (let z = middle - near.heightMm / 2; z < middle; z += FLOOR_MM.up) {
      const height = { fromMm: z - SLAB.heightMm / 2, toMm: z + SLAB.heightMm / 2 };
      const isInside = [x - half, x, x + half].every((stationMm) => {
        const across = acrossAt(hull, stationMm, height);
        return (
          across !== null && across.fromMm <= y - SLAB.widthMm / 2 && across.toMm >= y + SLAB.widthMm / 2
        );
      });
      if (!isInside) continue;
      if (holdsG([x, y, z], SLAB, inTheWay) >= slabG) return [x, y, z];
      break;
    }
  }
  return null;
}

const slabG = 0.999 * SLAB.lengthMm * SLAB.widthMm * SLAB.heightMm * METAL_G_PER_MM3.lead;

const sectionNear = ({ shape: { sections }, pose }: NamedHull, x: number) =>
  sections.reduce((a, b) =>
    Math.abs(b.xMm + pose.positionMm[0] - x) < Math.abs(a.xMm + pose.positionMm[0] - x) ? b : a,
  );

/** What a stack round a point holds of lead, as long as it stays clear of boxes fore and aft, g. */
function holdsG(
  [x, y, z]: Vec3,
  { lengthMm, widthMm, heightMm }: Room,
  boxes: readonly { readonly minMm: Vec3; readonly maxMm: Vec3 }[],
): number {
  const halfMm = boxes.reduce((half, { minMm, maxMm }) => {
    const beside =
      Math.max(minMm[1] - y, y - maxMm[1]) >= widthMm / 2 + CLEAR_MM ||
      Math.max(minMm[2] - z, z - maxMm[2]) >= heightMm / 2 + CLEAR_MM;
    return beside ? half : Math.min(half, Math.max(minMm[0] - x, x - maxMm[0]) - CLEAR_MM);
  }, lengthMm / 2);
  return 2 * Math.max(0, halfMm) * widthMm * heightMm * METAL_G_PER_MM3.lead;
}

/** Spots as the search takes them: with the size of their room, and no more in them than that holds. */
export function sizedSpots(aircraft: Aircraft, spots: readonly BallastSpotItem[]): BallastSpot[] {
  return spots.map((spot) => {
    const { id, name, positionMm, stepG, mostG, metal = 'lead', lengthMm, widthMm, heightMm } = spot;
    const found = roomAt(aircraft, positionMm) ?? cubeOf(mostG / METAL_G_PER_MM3[metal]);
    const body: BallastBody = {
      lengthMm: lengthMm ?? found.lengthMm,
      widthMm: widthMm ?? found.widthMm,
      heightMm: heightMm ?? found.heightMm,
      densityGPerMm3: METAL_G_PER_MM3[metal],
    };
    return { id, name, positionMm, stepG, mostG, body };
  });
}

type Room = Pick<BallastBody, 'lengthMm' | 'widthMm' | 'heightMm'>;

/** What a hull leaves round a point; null in the open, where it is taken that there is room for what is allowed. */
function roomAt(aircraft: Aircraft, positionMm: Vec3): Room | null {
  const rooms = hulls(aircraft).flatMap((hull) => stackIn(hull, positionMm) ?? []);
  return rooms.reduce<Room | null>(
    (best, room) => (!best || volume(room) > volume(best) ? room : best),
    null,
  );
}

function cubeOf(volumeMm3: number): Room {
  const edgeMm = Math.cbrt(Math.max(volumeMm3, 1));
  return { lengthMm: edgeMm, widthMm: edgeMm, heightMm: edgeMm };
}

const volume = ({ lengthMm, widthMm, heightMm }: Room) => lengthMm * widthMm * heightMm;

/** The largest square stack round a point that lies in a hull; null where none does. */
function stackIn(hull: NamedHull, [x, y, z]: Vec3): Room | null {
  let best: Room | null = null;
  for (let wide = WIDEST_MM; wide >= NARROWEST_MM; wide -= 2) {
    let half = -1;
    for (let out = 0; out <= LONGEST_MM / 2; out += 2) {
      const inside = [x - out, x + out].every((stationMm) => {
        const across = acrossAt(hull, stationMm, { fromMm: z - wide / 2, toMm: z + wide / 2 });
        return across !== null && across.fromMm <= y - wide / 2 && across.toMm >= y + wide / 2;
      });
      if (!inside) break;
      half = out;
    }
    const room = { lengthMm: 2 * half, widthMm: wide, heightMm: wide };
    if (half > 0 && (!best || volume(room) > volume(best))) best = room;
  }
  return best;
}

/** Marks the place of ballast that has been taken out. */
const EMPTIED = 'was ';

/**
 * The places of ballast that is taken out first: what is needed of it stays there, in the room that it had, unless that is kept
 * free of ballast.
 */
export const emptiedSpots = (emptied: readonly Part[], free: readonly Obstacle[]): BallastSpot[] =>
  emptied.flatMap((part): BallastSpot[] => {
    const cgMm = partBody(part).mass.cgMm;
    if (!cgMm || part.massG < 1 || free.some((zone) => boxesMeet(itemExtent(part), zone))) return [];
    const { id, name, massG } = part;
    return [{ id: `${EMPTIED}${id}`, name, positionMm: cgMm, stepG: 1, mostG: Math.floor(massG) }];
  });

/** The id of the ballast that stood at a spot; null for a spot that is not such a place. */
export const emptiedId = (spotId: string): string | null =>
  spotId.startsWith(EMPTIED) ? spotId.slice(EMPTIED.length) : null;
