import type { Vec3 } from '../geometry/types';
import { add, addScaled, cross, length, sub } from '../geometry/vec3';
import { around } from '../mass/shapeBounds';
import type { Mesh } from '../mass/types';
import { perObject } from '../memory/memory';
import { meshHolds } from './meshHolds';
import { cornerStepMm } from './welded';

/** So far under its skin a shell is looked at: deeper than corners are moved, so that a face laid on another is told apart. */
const underMm = 10 * cornerStepMm;
/** What may lie outside and still be slivers at a sharp edge, as a share of the skin. */
const sliverShare = 1e-3;

const boxOf = perObject(({ verticesMm }: Mesh) => around(verticesMm));

/**
 * Whether a shell lies in another, all of it: one that only touches the other, or that cuts it, does not. Looked for just
 * under the shell's own skin, behind each of its triangles; `outward` is −1 where those face inwards.
 */
export function liesIn(shell: Mesh, outward: 1 | -1, other: Mesh): boolean {
  const [small, large] = [boxOf(shell), boxOf(other)];
  const within = [0, 1, 2].every(
    (axis) =>
      small.minMm[axis]! >= large.minMm[axis]! - underMm &&
      small.maxMm[axis]! <= large.maxMm[axis]! + underMm,
  );
  if (!within) return false;
  let [inside, outside] = [0, 0];
  for (const triangle of shell.triangles) {
    const [a, b, c] = triangle.map((i) => shell.verticesMm[i]!) as [Vec3, Vec3, Vec3];
    const facing = cross(sub(b, a), sub(c, a));
    const size = length(facing);
    if (size === 0) continue;
    const sum = add(a, add(b, c));
    const middle: Vec3 = [sum[0] / 3, sum[1] / 3, sum[2] / 3];
    if (meshHolds(other, addScaled(middle, facing, (-outward * underMm) / size))) inside += size;
    else outside += size;
  }
  return outside <= sliverShare * (inside + outside);
}
