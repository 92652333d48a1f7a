import type { Vec3 } from '../engine/geometry/types';

/** A box square to the aircraft's axes, mm. */
export interface Extent {
  readonly minMm: Vec3;
  readonly maxMm: Vec3;
}

export interface SnapSetting {
  /** The grid step, mm. */
  readonly gridMm: number;
  /** How near counts as near, mm. */
  readonly reachMm: number;
  /** Which of station, buttline and waterline the drag moves. */
  readonly moving: readonly [boolean, boolean, boolean];
  /** The item's extent when its origin stands at the datum. */
  readonly extent: Extent;
  readonly neighbours: readonly Extent[];
}

export interface Snapped {
  readonly positionMm: Vec3;
  /** What each axis caught on. */
  readonly caught: readonly ['free' | Catch, 'free' | Catch, 'free' | Catch];
}

export type Catch = 'grid' | 'centreline' | 'touching';

const overlaps = (a: Extent, b: Extent, axis: number) =>
  (a.minMm[axis] ?? 0) < (b.maxMm[axis] ?? 0) - 1e-6 && (a.maxMm[axis] ?? 0) > (b.minMm[axis] ?? 0) + 1e-6;

const placed = (extent: Extent, at: Vec3): Extent => ({
  minMm: [extent.minMm[0] + at[0], extent.minMm[1] + at[1], extent.minMm[2] + at[2]],
  maxMm: [extent.maxMm[0] + at[0], extent.maxMm[1] + at[1], extent.maxMm[2] + at[2]],
});

/** The nearest place on an axis, within reach, where the item's face touches a neighbour's. */
function touching(wanted: Vec3, axis: 0 | 1 | 2, setting: SnapSetting): number | null {
  const here = placed(setting.extent, wanted);
  let best: number | null = null;
  for (const neighbour of setting.neighbours) {
    const beside = [0, 1, 2].every((other) => other === axis || overlaps(here, neighbour, other));
    if (!beside) continue;
    const faces = [
      neighbour.minMm[axis] - setting.extent.maxMm[axis],
      neighbour.maxMm[axis] - setting.extent.minMm[axis],
    ];
    for (const at of faces) {
      const off = Math.abs(at - wanted[axis]);
      if (off <= setting.reachMm && (best === null || off < Math.abs(best - wanted[axis]))) best = at;
    }
  }
  return best;
}

/** Catches a wanted place on a neighbour's face, the centre line or the grid, in that order, on each moving axis. */
export function snapPlace(wanted: Vec3, setting: SnapSetting): Snapped {
  const caught: ['free' | Catch, 'free' | Catch, 'free' | Catch] = ['free', 'free', 'free'];
  const at: [number, number, number] = [...wanted];
  for (const axis of [0, 1, 2] as const) {
    if (!setting.moving[axis]) continue;
    const face = touching(wanted, axis, setting);
    if (face !== null) {
      at[axis] = face;
      caught[axis] = 'touching';
    } else if (axis === 1 && Math.abs(wanted[1]) <= setting.reachMm) {
      at[axis] = 0;
      caught[axis] = 'centreline';
    } else {
      at[axis] = Math.round(wanted[axis] / setting.gridMm) * setting.gridMm;
      caught[axis] = 'grid';
    }
  }
  return { positionMm: at, caught };
}
