import { poseRotation } from '../geometry/rotation';
import type { Pose, Vec3 } from '../geometry/types';
import type { Shape, TubeShape } from '../mass/shapes';
import { type Convex, type ConvexPiece, movedConvex, placeConvex } from './convex';
import { convexPieces, openTubePieces } from './convexPieces';

/** A shape where it stands in the aircraft, as convex solids, with the box around it square to the axes, mm. */
export interface Solid {
  readonly convexes: readonly Convex[];
  readonly minMm: Vec3;
  readonly maxMm: Vec3;
}

export interface PosedShape {
  readonly shape: Shape;
  readonly pose: Pose;
}

/** Sets a shape down. A tube is taken as its outside. */
export const solidOf = ({ shape, pose }: PosedShape): Solid => placed(convexPieces(shape), pose);

/** Sets a tube down with its bore open. */
export const openTube = (shape: TubeShape, pose: Pose): Solid => placed(openTubePieces(shape), pose);

const ORIGIN: Vec3 = [0, 0, 0];

function placed(pieces: readonly ConvexPiece[], pose: Pose): Solid {
  const rotation = poseRotation(pose);
  return solidOfConvexes(pieces.map((piece) => placeConvex(piece, rotation, pose.positionMm)));
}

export function solidOfConvexes(convexes: readonly Convex[]): Solid {
  const [first] = convexes;
  const least: [number, number, number] = [...(first?.minMm ?? ORIGIN)];
  const most: [number, number, number] = [...(first?.maxMm ?? ORIGIN)];
  for (const { minMm, maxMm } of convexes)
    for (const axis of [0, 1, 2] as const) {
      least[axis] = Math.min(least[axis], minMm[axis]);
      most[axis] = Math.max(most[axis], maxMm[axis]);
    }
  return { convexes, minMm: least, maxMm: most };
}

export const movedSolid = ({ convexes, minMm, maxMm }: Solid, byMm: Vec3): Solid => ({
  convexes: convexes.map((convex) => movedConvex(convex, byMm)),
  minMm: [minMm[0] + byMm[0], minMm[1] + byMm[1], minMm[2] + byMm[2]],
  maxMm: [maxMm[0] + byMm[0], maxMm[1] + byMm[1], maxMm[2] + byMm[2]],
});

interface Box {
  readonly minMm: Vec3;
  readonly maxMm: Vec3;
}

/** The distance between two boxes square to the axes, mm; 0 when they meet. Never more than what they hold is apart. */
export function boxGap(a: Box, b: Box): number {
  let sum = 0;
  for (let axis = 0; axis < 3; axis += 1) {
    const gap = Math.max(a.minMm[axis]! - b.maxMm[axis]!, b.minMm[axis]! - a.maxMm[axis]!, 0);
    sum += gap * gap;
  }
  return Math.sqrt(sum);
}
