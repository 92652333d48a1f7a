import { hullClearance, hullHolds } from '../../engine/fit/hull';
import { solidOf } from '../../engine/fit/solid';
import { pointFromAircraft, pointToAircraft } from '../../engine/geometry/rotation';
import type { Pose, Vec3 } from '../../engine/geometry/types';
import { add, scale, sub } from '../../engine/geometry/vec3';
import { shapeBounds } from '../../engine/mass/shapeBounds';
import { sectionBetween } from '../../engine/mass/solids/loft';
import { poseOf } from '../airframe/poses';
import {
  hulls,
  itemShape,
  middleOf,
  type NamedHull,
  type Standing,
  standingStructure,
} from '../airframe/solids';
import { shownText } from '../document/names';
import type { Aircraft, Bay, Part } from '../document/types';

/** A part that leaves the bay it is bound to. */
export interface BayFault {
  readonly bayId: string;
  readonly bayName: string;
  /** How far it reaches over the bay's side, the worst side, mm. */
  readonly overMm: number;
  /** The move that brings it in, aircraft frame, mm; null when it is too big for the bay as it is turned. */
  readonly moveByMm: Vec3 | null;
  readonly sentence: string;
}

/** What is wrong with a part's place in its bay; null when it is inside, or bound to none. */
export function bayFault({ bays = [] }: Aircraft, part: Part): BayFault | null {
  const bay = bays.find(({ id }) => id === part.bayId);
  if (!bay) return null;
  const { minMm, maxMm } = boundsSeenFrom(poseOf(bay), part);
  const half: Vec3 = [bay.lengthMm / 2, bay.widthMm / 2, bay.heightMm / 2];
  const over = ([0, 1, 2] as const).map((axis) => {
    const low = -half[axis] - minMm[axis];
    const high = maxMm[axis] - half[axis];
    return { low, high, tooBig: maxMm[axis] - minMm[axis] > 2 * half[axis] + tolerance };
  });
  const overMm = Math.max(...over.flatMap(({ low, high }) => [low, high]));
  if (overMm <= tolerance) return null;
  const tooBig = over.some((each) => each.tooBig);
  const [x, y, z] = over.map(({ low, high }) => Math.max(0, low) - Math.max(0, high)) as [
    number,
    number,
    number,
  ];
  const moveByMm = tooBig ? null : sub(pointToAircraft(poseOf(bay), [x, y, z]), bay.positionMm);
  const sentence = tooBig
    ? `${shownText(part.name)} is too big for ${shownText(bay.name)} as it is turned.`
    : `${shownText(part.name)} reaches ${overMm.toFixed(1)} mm out of ${shownText(bay.name)}.`;
  return { bayId: bay.id, bayName: bay.name, overMm, moveByMm, sentence };
}

const tolerance = 1e-6;

/** The box round a part along another body's axes. */
function boundsSeenFrom(frame: Pose, part: Part) {
  const axis = (v: Vec3) => sub(pointFromAircraft(frame, v), pointFromAircraft(frame, [0, 0, 0]));
  const solid = solidOf({ shape: itemShape(part), pose: poseOf(part) });
  const out = new Float64Array(3);
  const [ex, ey, ez] = [axis([1, 0, 0]), axis([0, 1, 0]), axis([0, 0, 1])];
  const reach = (n: Vec3): number => {
    // n in the bay's frame, the support in the aircraft's.
    const way: Vec3 = [
      n[0] * ex[0] + n[1] * ex[1] + n[2] * ex[2],
      n[0] * ey[0] + n[1] * ey[1] + n[2] * ey[2],
      n[0] * ez[0] + n[1] * ez[1] + n[2] * ez[2],
    ];
    const reaches = solid.convexes.map((convex) => {
      convex.support(...way, out, 0);
      const p = pointFromAircraft(frame, [out[0]!, out[1]!, out[2]!]);
      return p[0] * n[0] + p[1] * n[1] + p[2] * n[2] + convex.radiusMm;
    });
    return Math.max(...reaches);
  };
  const minMm: Vec3 = [-reach([-1, 0, 0]), -reach([0, -1, 0]), -reach([0, 0, -1])];
  return { minMm, maxMm: [reach([1, 0, 0]), reach([0, 1, 0]), reach([0, 0, 1])] as Vec3 };
}

/** A former is thin fore and aft, mm, and fills this share of the hull's section or more. */
const thinMm = 12;
const filling = 0.6;
/** Bays shorter or narrower than this are not proposed, mm. */
const leastMm = 25;

/**
 * Bays between the formers of each hull on the plane of symmetry or off it: the greatest box square to the
 * axes in each stretch, clear of the skin. Names and ids count from the nose. A proposal, to be edited.
 */
export function proposeBays(aircraft: Aircraft): Bay[] {
  const structure = standingStructure(aircraft);
  return hulls(aircraft).flatMap((hull) => {
    const formers = structure
      .filter((each) => isFormer(each, hull))
      .sort((a, b) => a.solid.minMm[0] - b.solid.minMm[0]);
    const { minMm, maxMm } = shapeBounds(hull.shape);
    const x0 = hull.pose.positionMm[0];
    const fronts = [x0 + minMm[0] + hull.skinMm, ...formers.map(({ solid }) => solid.maxMm[0])];
    const rears = [...formers.map(({ solid }) => solid.minMm[0]), x0 + maxMm[0] - hull.skinMm];
    const boxes = fronts.flatMap((front, i) => largestBox(hull, front, rears[i]!) ?? []);
    return boxes.map(({ sizeMm, middleMm }, i) => ({
      id: `${hull.id.replaceAll('.', '-')}-bay-${i + 1}`,
      name: `${hull.name}, bay ${i + 1}`,
      lengthMm: sizeMm[0],
      widthMm: sizeMm[1],
      heightMm: sizeMm[2],
      positionMm: middleMm,
      yawDeg: 0,
      pitchDeg: 0,
      rollDeg: 0,
    }));
  });
}

function isFormer({ solid }: Standing, hull: NamedHull): boolean {
  const [long, wide, high] = sub(solid.maxMm, solid.minMm);
  const middle = middleOf(solid);
  const room = roomAt(hull, middle[0]);
  return (
    long <= thinMm &&
    room !== null &&
    Math.abs(middle[1] - room.y) < room.a &&
    Math.abs(middle[2] - room.z) < room.b &&
    wide >= filling * 2 * room.a &&
    high >= filling * 2 * room.b
  );
}

/** The hull's section at a station, aircraft frame: middle, half sizes, and the box within its round corners. */
function roomAt({ shape: { sections }, pose, skinMm }: NamedHull, stationMm: number) {
  const x = stationMm - pose.positionMm[0];
  const at = sections.findIndex((section, i) => i > 0 && section.xMm >= x && sections[i - 1]!.xMm <= x);
  if (at < 0) return null;
  const [from, to] = [sections[at - 1]!, sections[at]!];
  const { widthMm, heightMm, centreYMm, centreZMm, roundness } = sectionBetween(
    from,
    to,
    (x - from.xMm) / (to.xMm - from.xMm),
  );
  const corner = 1 - roundness * (1 - Math.SQRT1_2);
  const [a, b] = [widthMm / 2, heightMm / 2];
  return {
    a,
    b,
    y: pose.positionMm[1] + centreYMm,
    z: pose.positionMm[2] + centreZMm,
    boxA: a * corner - skinMm,
    boxB: b * corner - skinMm,
  };
}

/** The room that a part in a bay really has, and what of the bay lies in the skin or outside it. */
export interface BayRoom {
  readonly bayId: string;
  /** The greatest box found within the bay, square to the aircraft's axes, clear of the skin; null where there is none. */
  readonly room: { readonly minMm: Vec3; readonly maxMm: Vec3 } | null;
  /** How far the bay reaches out of the inner face of the hull that holds its middle, mm; 0 when it lies within. */
  readonly overMm: number;
  readonly sentence: string | null;
}

/**
 * A bay as it is: cut by the hull that holds its middle. A bay in no hull, as in a wing, keeps its size. A bay that is
 * turned is taken by the box about it, and then cut.
 */
export function bayRoom(aircraft: Pick<Aircraft, 'structure'>, bay: Bay): BayRoom {
  const { id: bayId, lengthMm, widthMm, heightMm } = bay;
  const solid = solidOf({ shape: { kind: 'box', lengthMm, widthMm, heightMm }, pose: poseOf(bay) });
  const { minMm, maxMm } = solid;
  const around = hulls(aircraft).filter((hull) => hullHolds(hull, bay.positionMm));
  if (around.length === 0) return { bayId, room: { minMm, maxMm }, overMm: 0, sentence: null };
  const [hull, { distanceMm }] = around
    .map((each) => [each, hullClearance(solid, each)] as const)
    .reduce((best, each) => (each[1].distanceMm > best[1].distanceMm ? each : best));
  if (distanceMm >= -tolerance) return { bayId, room: { minMm, maxMm }, overMm: 0, sentence: null };
  const overMm = -distanceMm;
  const box = largestBox(hull, minMm[0], maxMm[0], { minMm, maxMm, leastMm: 1 });
  const half = box && scale(box.sizeMm, 0.5);
  const room = box && half && { minMm: sub(box.middleMm, half), maxMm: add(box.middleMm, half) };
  const sentence = `${bay.name} reaches ${overMm.toFixed(1)} mm out of ${hull.name}${room ? '' : ', and has no room within it'}.`;
  return { bayId, room, overMm, sentence };
}

const cuts = 24;
/** However many sections a hull has. */
const mostCuts = 400;

/**
 * The greatest box between two stations that lies within every section between its ends, and within another box if one
 * is given; null when there is none.
 */
function largestBox(
  hull: NamedHull,
  front: number,
  rear: number,
  within?: { readonly minMm: Vec3; readonly maxMm: Vec3; readonly leastMm: number },
) {
  const even = Array.from({ length: cuts + 1 }, (_, i) => front + ((rear - front) * i) / cuts);
  // Where the hull has a waist, it is at one of its sections.
  const stations = hull.shape.sections
    .map(({ xMm }) => xMm + hull.pose.positionMm[0])
    .filter((x) => x > front && x < rear);
  const rooms = [...even, ...stations]
    .sort((a, b) => a - b)
    .slice(0, mostCuts)
    .map((x) => ({ x, room: roomAt(hull, x) }));
  const least = within?.leastMm ?? leastMm;
  let best: { sizeMm: Vec3; middleMm: Vec3 } | null = null;
  let most = 0;
  for (let i = 0; i < rooms.length - 1; i += 1) {
    const low: [number, number] = within ? [within.minMm[1], within.minMm[2]] : [-Infinity, -Infinity];
    const high: [number, number] = within ? [within.maxMm[1], within.maxMm[2]] : [Infinity, Infinity];
    for (let j = i; j < rooms.length; j += 1) {
      const room = rooms[j]!.room;
      if (!room) break;
      low[0] = Math.max(low[0], room.y - room.boxA);
      high[0] = Math.min(high[0], room.y + room.boxA);
      low[1] = Math.max(low[1], room.z - room.boxB);
      high[1] = Math.min(high[1], room.z + room.boxB);
      const from: Vec3 = [rooms[i]!.x, low[0], low[1]];
      const to: Vec3 = [rooms[j]!.x, high[0], high[1]];
      const size = sub(to, from);
      const volume = size[0] * size[1] * size[2];
      if (size.some((side) => side < least) || volume <= most) continue;
      most = volume;
      best = { sizeMm: size, middleMm: scale([from[0] + to[0], from[1] + to[1], from[2] + to[2]], 0.5) };
    }
  }
  return best;
}
