import type { Vec3 } from '../geometry/types';
import { AXES, type Axis, canPrecede, type Occupant } from './regions';

/** One direction in which a pair may be apart: Σ weight·(gap along the axis) is at least what is asked. */
export interface Way {
  readonly along: readonly { readonly axis: Axis; readonly front: 'a' | 'b'; readonly weight: number }[];
  readonly leastMm: number;
}

const SIDES = ['a', 'b'] as const;

/** Apart along one axis, either way round. */
export const axisWays = (gapMm: number): Way[] =>
  AXES.flatMap((axis) =>
    SIDES.map((front): Way => ({ along: [{ axis, front, weight: 1 }], leastMm: gapMm })),
  );

/** The chord from a rounded edge's end to its middle: tan 22.5°. */
const CHORD = Math.SQRT2 - 1;

/**
 * Apart by a straight distance: along an axis, past an edge, past a corner. Edges and corners are cut by chords, so these
 * ways let through all that keeps the distance, and at most 7.6 % short of it past an edge.
 */
export function straightWays(gapMm: number): Way[] {
  const edges = ([0, 1, 2] as const).flatMap((skipped) => {
    const [p, q] = AXES.filter((axis) => axis !== skipped) as [Axis, Axis];
    return SIDES.flatMap((first) =>
      SIDES.flatMap((second) =>
        (
          [
            [1, CHORD],
            [CHORD, 1],
          ] as const
        ).map(
          ([u, v]): Way => ({
            along: [
              { axis: p, front: first, weight: u },
              { axis: q, front: second, weight: v },
            ],
            leastMm: gapMm,
          }),
        ),
      ),
    );
  });
  const corners = SIDES.flatMap((x) =>
    SIDES.flatMap((y) =>
      SIDES.map(
        (z): Way => ({
          along: [
            { axis: 0, front: x, weight: 1 },
            { axis: 1, front: y, weight: 1 },
            { axis: 2, front: z, weight: 1 },
          ],
          leastMm: gapMm * Math.SQRT2,
        }),
      ),
    ),
  );
  return [...axisWays(gapMm), ...edges, ...corners];
}

/** Whether two items can be apart in a way at all: each gap of it can be had, and together they are enough. */
export function canBeApart(a: Occupant, b: Occupant, { along, leastMm }: Way): boolean {
  if (along.length === 1) {
    const { axis, front } = along[0]!;
    return front === 'a' ? canPrecede(a, b, leastMm, axis) : canPrecede(b, a, leastMm, axis);
  }
  const most = along.map(({ axis, front, weight }) => {
    const [first, last] = front === 'a' ? [a, b] : [b, a];
    const gapMm =
      last.region.maxMm[axis] - last.sizeMm[axis] - (first.region.minMm[axis] + first.sizeMm[axis]);
    return { gapMm, weighed: weight * gapMm };
  });
  return (
    most.every(({ gapMm }) => gapMm > 0) && most.reduce((sum, { weighed }) => sum + weighed, 0) >= leastMm
  );
}

/** The way in which boxes stand farthest apart at these places, so that keeping it keeps the distance. */
export function wayAt(
  places: readonly [Vec3, Vec3],
  sizes: readonly [Vec3, Vec3],
  gapMm: number,
  by: 'axis' | 'straight',
): Way {
  const gaps = AXES.map((axis) => {
    const onMm = places[1][axis] - places[0][axis];
    const front = onMm >= 0 ? ('a' as const) : ('b' as const);
    return { axis, front, gapMm: Math.abs(onMm) - (sizes[0][axis] + sizes[1][axis]) / 2 };
  });
  const widest = gaps.reduce((widestSoFar, other) => (other.gapMm > widestSoFar.gapMm ? other : widestSoFar));
  const free = gaps.filter(({ gapMm: mm }) => mm > 0);
  if (by === 'axis' || free.length < 2 || widest.gapMm >= gapMm) {
    return { along: [{ axis: widest.axis, front: widest.front, weight: 1 }], leastMm: gapMm };
  }
  const size = Math.hypot(...free.map(({ gapMm: mm }) => mm));
  return {
    along: free.map(({ axis, front, gapMm: mm }) => ({ axis, front, weight: mm / size })),
    leastMm: gapMm,
  };
}
