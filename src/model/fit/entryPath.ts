import { findPath, type PathQuery, type PathResult, poseTravelMm } from '../../engine/fit/pathSearch';
import { shapesClash, touchMm } from '../../engine/fit/shapeDistance';
import { boxGap, type Solid, solidOf } from '../../engine/fit/solid';
import type { Pose, Vec3 } from '../../engine/geometry/types';
import { add, addScaled, dot, length, sub } from '../../engine/geometry/vec3';
import { poseOf } from '../airframe/poses';
import {
  hulls,
  itemShape,
  itemSolid,
  middleOf,
  type NamedHull,
  type Standing,
  standingItems,
  standingStructure,
} from '../airframe/solids';
import { type SurfaceSolid, surfaceSolids } from '../airframe/surfaceSolids';
import { type Item, itemById } from '../document/edit';
import type { Aircraft, Hatch } from '../document/types';
import { hullFit } from './clearances';
import { hatchAxes, wallsWithout } from './hatchWalls';
import { placeFit } from './placeFit';

export interface EntryOptions {
  /** Poses to look at before giving up. */
  readonly budget?: number;
  /** The same seed gives the same search. */
  readonly seed?: number;
  /** Items not mounted yet, by their ids. */
  readonly without?: ReadonlySet<string>;
  /** Gives the way as it was found, detours and all: for whom it is enough that there is one. */
  readonly asFound?: boolean;
}

export type EntryPath =
  | {
      readonly found: true;
      /** From outside the hatch to where it is mounted, no point moving more than `stepMm` from one to the next. */
      readonly poses: readonly Pose[];
      readonly tried: number;
      /** Flying surfaces that have to be off for it, by their names; none when it goes past all of them. */
      readonly off: readonly string[];
      readonly sentence: string;
    }
  | {
      readonly found: false;
      /** Poses looked at. */
      readonly tried: number;
      /** What was run into most, the worst first, and its ids where it is no hull. */
      readonly blockedBy: readonly string[];
      readonly blockedByIds: readonly string[];
      readonly sentence: string;
    };

/** No point of a part goes further than this between two poses that are looked at, mm. */
export const stepMm = 2;
const defaultBudget = 12_000;
const tiltDeg = 90;

/**
 * Looks for a way by which an item goes in through a hatch to its place, past all that is mounted and past the
 * flying surfaces, by shifting and tilting; where a surface is in the way, for one with that surface off. Every pose
 * given is clear, and so are the steps of at most 2 mm between them. "No path found" is no proof that there is none.
 * Null when the item or the hatch is not there.
 */
export function entryPath(
  aircraft: Aircraft,
  itemId: string,
  hatchId: string,
  { budget = defaultBudget, seed = 1, without = new Set(), asFound = false }: EntryOptions = {},
): EntryPath | null {
  const item = itemById(aircraft, itemId);
  const hatch = aircraft.hatches?.find(({ id }) => id === hatchId);
  if (!item || !hatch) return null;
  const surfaces = surfacesPassed(aircraft, item);
  const test = mountedTest(aircraft, item, hatch, without);
  const past = surfaceTest(surfaces);
  const shape = itemShape(item);
  const placed = (pose: Pose) => solidOf({ shape, pose });
  const whole = attempt(placed, (solid) => test(solid) ?? past(solid)[0] ?? null);
  const bySurface = (id: string | null) => surfaces.some(({ sourceId }) => sourceId === id);
  const looking = { budget, seed, asFound };
  const rigged = whole.run(item, hatch, looking);
  if (rigged.poses) return foundWay(item, hatch, rigged.poses, rigged.tried, []);
  if (![...whole.struck.values()].some(({ id }) => bySurface(id)))
    return noWay(item, hatch, whole, rigged.tried);
  const bare = attempt(placed, test);
  const { poses, tried } = bare.run(item, hatch, looking);
  const all = rigged.tried + tried;
  if (!poses) return noWay(item, hatch, bare, all);
  const off = [...new Set(poses.flatMap((pose) => past(placed(pose)).map(({ name }) => name)))];
  return foundWay(item, hatch, poses, all, off);
}

type Looking = Pick<PathQuery, 'budget' | 'seed' | 'asFound'>;

/** One search, and what it ran into how often. */
function attempt(placed: (pose: Pose) => Solid, test: (solid: Solid) => Hit | null) {
  const struck = new Map<string, Hit & { readonly count: number }>();
  const clear = (pose: Pose) => {
    const hit = test(placed(pose));
    if (hit) {
      const before = struck.get(hit.id ?? hit.name) ?? { ...hit, count: 0 };
      struck.set(hit.id ?? hit.name, { ...before, count: before.count + 1 });
    }
    return !hit;
  };
  const run = (item: Item, hatch: Hatch, looking: Looking) => search(item, hatch, clear, looking);
  return { struck, run };
}

function foundWay(
  item: Item,
  hatch: Hatch,
  poses: readonly Pose[],
  tried: number,
  off: readonly string[],
): EntryPath {
  const bare = off.length > 0 ? ` with ${off.join(' and ')} off` : '';
  return { found: true, poses, tried, off, sentence: `${item.name} goes in through ${hatch.name}${bare}.` };
}

function noWay(
  item: Item,
  hatch: Hatch,
  { struck }: Pick<ReturnType<typeof attempt>, 'struck'>,
  tried: number,
): EntryPath {
  const worst = [...struck.values()].sort((a, b) => b.count - a.count).slice(0, 4);
  const blockedBy = worst.map(({ name }) => name);
  const sentence = `No path found for ${item.name} through ${hatch.name} in ${tried} poses${
    blockedBy.length > 0 ? `; it ran into ${blockedBy.join(', ')}` : ''
  }.`;
  return { found: false, tried, blockedBy, blockedByIds: worst.flatMap(({ id }) => id ?? []), sentence };
}

/** The surfaces that bar a way: not the one that holds the item, and not those that are cut away inside the hull. */
const surfacesPassed = (aircraft: Aircraft, item: Item): SurfaceSolid[] =>
  placeFit(aircraft.structure, itemSolid(item))?.where === 'surface'
    ? []
    : surfaceSolids(aircraft).filter(({ openToHull }) => !openToHull);

/** Says which surfaces an item runs into where it is held. */
const surfaceTest =
  (surfaces: readonly SurfaceSolid[]) =>
  (held: Solid): Hit[] =>
    surfaces
      .filter(({ solid }) => boxGap(held, solid) === 0 && shapesClash(held, solid))
      .map(({ name, sourceId }) => ({ name, id: sourceId }));

/** The hull that an item is fitted in, by its clearance; null outside. */
function ownHull(aircraft: Aircraft, item: Item): NamedHull | null {
  const fit = hullFit(aircraft, item.id);
  return fit.place === 'inside' ? (hulls(aircraft).find(({ id }) => id === fit.clearance.id) ?? null) : null;
}

type Hit = { readonly name: string; readonly id: string | null };

/** Says what an item runs into in a pose; null when it is clear. */
export function clearanceTest(
  aircraft: Aircraft,
  item: Item,
  hatch: Hatch,
  without: ReadonlySet<string> = new Set(),
): (pose: Pose) => Hit | null {
  const test = mountedTest(aircraft, item, hatch, without);
  const shape = itemShape(item);
  return (pose) => test(solidOf({ shape, pose }));
}

/** The same, for the item as the solid that it is in its pose. */
function mountedTest(
  aircraft: Aircraft,
  item: Item,
  hatch: Hatch,
  without: ReadonlySet<string>,
): (held: Solid) => Hit | null {
  const mounted = standingItems(aircraft).filter(({ id }) => id !== item.id && !without.has(id));
  const obstacles: readonly Standing[] = [...mounted, ...standingStructure(aircraft)];
  const walls = wallsWithout(aircraft, hatch, ownHull(aircraft, item));
  return (held) => {
    const hit = obstacles.find(({ solid }) => boxGap(held, solid) === 0 && shapesClash(held, solid));
    if (hit) return { name: hit.name, id: hit.sourceId };
    const wall = walls.find(({ tree }) => tree.nearest(held, touchMm));
    return wall ? { name: wall.name, id: null } : null;
  };
}

function search(item: Item, hatch: Hatch, clear: (pose: Pose) => boolean, looking: Looking): PathResult {
  const to = poseOf(item);
  const solid = itemSolid(item);
  const reachMm = furthestMm(solid, to.positionMm);
  const size = length(sub(solid.maxMm, solid.minMm));
  const out = hatchAxes(hatch).normal;
  const middle = middleOf(solid);
  // Its middle over the hatch, well outside.
  const over = addScaled(hatch.centreMm, out, size / 2 + 10);
  const from: Pose = { ...to, positionMm: addScaled(to.positionMm, sub(over, middle), 1) };
  // In under the hatch, as deep as its place is; and the same, turned by right angles.
  const aside = sub(over, middle);
  const under = addScaled(add(to.positionMm, aside), out, -dot(aside, out));
  const upright = [0, 90, -90].map((pitchDeg) => ({
    ...to,
    positionMm: under,
    pitchDeg: to.pitchDeg + pitchDeg,
  }));
  const around = (pick: (...values: number[]) => number, by: number): Vec3 => [
    pick(from.positionMm[0], to.positionMm[0]) + by,
    pick(from.positionMm[1], to.positionMm[1]) + by,
    pick(from.positionMm[2], to.positionMm[2]) + by,
  ];
  return findPath({
    from,
    to,
    clear,
    reachMm,
    minMm: around(Math.min, -size),
    maxMm: around(Math.max, size),
    tiltDeg,
    stepMm,
    ...looking,
    hints: upright,
  });
}

/** The distance from an origin to the furthest corner of the box around a solid, mm. */
function furthestMm({ minMm, maxMm }: Solid, [x, y, z]: Vec3): number {
  return Math.hypot(
    Math.max(x - minMm[0], maxMm[0] - x),
    Math.max(y - minMm[1], maxMm[1] - y),
    Math.max(z - minMm[2], maxMm[2] - z),
  );
}

/** The greatest step of a path for an item, mm: never more than `stepMm`. */
export function longestStepMm(item: Item, poses: readonly Pose[]): number {
  const reachMm = furthestMm(itemSolid(item), item.positionMm);
  return Math.max(0, ...poses.slice(1).map((pose, i) => poseTravelMm(poses[i]!, pose, reachMm)));
}
