import type { Vec3 } from '../geometry/types';
import { lineSurplus, type PackItem, standingInLine } from './lineBound';
import { AXES, type Axis, canPrecede } from './regions';
import { SAME_MM } from './tolerances';

export interface Packing {
  /** No packing costs less than this. */
  readonly bound: number;
  /** The front, left, lower corners of the best packing found, mm; null when the search was cut short before one. */
  readonly cornersMm: readonly Vec3[] | null;
}

/** The first stands before the second along the axis. */
interface Arc {
  readonly before: number;
  readonly after: number;
  readonly apartMm: number;
}

/**
 * Packs boxes as far forward as their costs ask: least Σ perMm·(front corner), with perMm ≥ 0. Null when they do not
 * fit. `gapOf` is the gap that a pair must keep, −∞ for a pair that never matters. Given for every pair in which direction it is apart, all boxes can stand at their earliest at once, which is best;
 * so only these directions are searched, and only for pairs that collide where they stand.
 */
export function packForward(
  items: readonly PackItem[],
  gapOf: (i: number, j: number) => number,
  mostNodes: number,
): Packing | null {
  const smith = packedInLine(items, gapOf);
  if (smith) return Number.isFinite(smith.bound) ? smith : null;
  const arcs: Arc[][] = [[], [], []];
  const first = items.map(({ region }): Vec3 => region.minMm);
  let nodes = 0;
  let bestCost = Number.POSITIVE_INFINITY;
  let best: readonly Vec3[] | null = null;
  let unsearched = Number.POSITIVE_INFINITY;
  const line = standingInLine(items, gapOf);
  /** No packing that follows from these earliest corners costs less. */
  const costOf = (corners: readonly Vec3[]) =>
    corners.reduce((sum, corner, i) => sum + (items[i]?.perMm ?? 0) * corner[0], 0) +
    lineSurplus(items, corners, line);

  const search = (corners: readonly Vec3[]) => {
    const cost = costOf(corners);
    if (cost >= bestCost - 1e-9) return;
    nodes += 1;
    if (nodes > mostNodes) {
      unsearched = Math.min(unsearched, cost);
      return;
    }
    const pair = collision(items, corners, gapOf);
    if (!pair) {
      // Clear of each other at their earliest: then what stands in line adds nothing either.
      bestCost = cost;
      best = corners;
      return;
    }
    for (const { axis, before, after } of waysApart(items, pair, gapOf)) {
      const apartMm = items[before]!.sizeMm[axis] + gapOf(before, after);
      arcs[axis]!.push({ before, after, apartMm });
      const next = settle(items, corners, arcs[axis]!, axis);
      if (next) search(next);
      arcs[axis]!.pop();
    }
  };
  search(first);
  const bound = Math.min(bestCost, unsearched);
  return Number.isFinite(bound) ? { bound, cornersMm: best } : null;
}

/** Moves corners back along an axis until all arcs hold; null when something leaves its region. */
function settle(
  items: readonly PackItem[],
  corners: readonly Vec3[],
  arcs: readonly Arc[],
  axis: Axis,
): readonly Vec3[] | null {
  const at = corners.map((corner) => corner[axis]);
  for (let moved = true; moved; ) {
    moved = false;
    for (const { before, after, apartMm } of arcs) {
      const least = at[before]! + apartMm;
      if (at[after]! >= least - 1e-12) continue;
      const item = items[after]!;
      if (least > item.region.maxMm[axis] - item.sizeMm[axis] + SAME_MM) return null;
      at[after] = least;
      moved = true;
    }
  }
  return corners.map((corner, i): Vec3 => {
    if (at[i] === corner[axis]) return corner;
    const moved: [number, number, number] = [...corner];
    moved[axis] = at[i]!;
    return moved;
  });
}

type Pair = readonly [number, number];

/** The first pair that is nearer than its gap along all three axes. */
function collision(
  items: readonly PackItem[],
  corners: readonly Vec3[],
  gapOf: (i: number, j: number) => number,
): Pair | null {
  for (let i = 0; i < items.length; i++) {
    for (let j = i + 1; j < items.length; j++) {
      const gap = gapOf(i, j);
      const meet = AXES.every(
        (axis) =>
          corners[i]![axis] + items[i]!.sizeMm[axis] + gap > corners[j]![axis] + SAME_MM &&
          corners[j]![axis] + items[j]!.sizeMm[axis] + gap > corners[i]![axis] + SAME_MM,
      );
      if (meet) return [i, j];
    }
  }
  return null;
}

/** Sideways and upward first, which cost nothing; then along x, the costlier for its length in front (Smith's rule). */
function waysApart(items: readonly PackItem[], [i, j]: Pair, gapOf: (i: number, j: number) => number) {
  const [a, b] = [items[i]!, items[j]!];
  const [front, rear] = a.perMm * b.sizeMm[0] >= b.perMm * a.sizeMm[0] ? [i, j] : [j, i];
  const ways = [
    { axis: 1, before: i, after: j },
    { axis: 1, before: j, after: i },
    { axis: 2, before: i, after: j },
    { axis: 2, before: j, after: i },
    { axis: 0, before: front, after: rear },
    { axis: 0, before: rear, after: front },
  ] as const;
  return ways.filter(({ axis, before, after }) =>
    canPrecede(items[before]!, items[after]!, gapOf(before, after), axis),
  );
}

/**
 * Things that can only stand one behind another in one stretch with one gap: in the order of cost per length it is
 * least (W. E. Smith, Various optimizers for single-stage production, Naval Research Logistics Quarterly 3, 1956).
 * Null where that does not apply.
 */
function packedInLine(items: readonly PackItem[], gapOf: (i: number, j: number) => number): Packing | null {
  const [head] = items;
  if (!head || items.length < 2) return null;
  const gapMm = gapOf(0, 1);
  for (let i = 0; i < items.length; i++) {
    const item = items[i]!;
    if (item.region.minMm[0] !== head.region.minMm[0] || item.region.maxMm[0] !== head.region.maxMm[0])
      return null;
    for (let j = 0; j < i; j++) {
      if (gapOf(i, j) !== gapMm) return null;
      const sideways = ([1, 2] as const).some(
        (axis) =>
          canPrecede(item, items[j]!, gapMm, axis) ||
          canPrecede(items[j]!, item, gapMm, axis) ||
          item.region.minMm[axis] >= items[j]!.region.maxMm[axis] + gapMm - SAME_MM ||
          items[j]!.region.minMm[axis] >= item.region.maxMm[axis] + gapMm - SAME_MM,
      );
      if (sideways) return null;
    }
  }
  const order = items
    .map((_, i) => i)
    .sort(
      (i, j) =>
        items[j]!.perMm * (items[i]!.sizeMm[0] + gapMm) - items[i]!.perMm * (items[j]!.sizeMm[0] + gapMm),
    );
  const cornersMm: Vec3[] = items.map(({ region }) => region.minMm);
  let at = head.region.minMm[0];
  let bound = 0;
  for (const i of order) {
    const { region, sizeMm, perMm } = items[i]!;
    cornersMm[i] = [at, region.minMm[1], region.minMm[2]];
    bound += perMm * at;
    if (at + sizeMm[0] > head.region.maxMm[0] + SAME_MM)
      return { bound: Number.POSITIVE_INFINITY, cornersMm: null };
    at += sizeMm[0] + gapMm;
  }
  return { bound, cornersMm };
}
