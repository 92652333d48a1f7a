import type { Vec3 } from '../../../src/engine/geometry/types';
import type { MassProperties } from '../../../src/engine/mass/types';

export interface PointMass {
  readonly massG: number;
  readonly atMm: Vec3;
}

/**
 * Mass properties of a heap of points straight from the definitions, the second route of these tests:
 * m = Σm, c = Σm p / m, Ixx = Σm(y² + z²), Ixy = −Σm xy, lengths from c.
 */
export function bruteForce(points: readonly PointMass[]): MassProperties {
  const massG = points.reduce((sum, p) => sum + p.massG, 0);
  const mean = (axis: 0 | 1 | 2) => points.reduce((sum, p) => sum + p.massG * p.atMm[axis], 0) / massG;
  const cgMm: Vec3 = [mean(0), mean(1), mean(2)];
  const sum = (term: (x: number, y: number, z: number) => number) =>
    points.reduce(
      (total, { massG: m, atMm: [x, y, z] }) => total + m * term(x - cgMm[0], y - cgMm[1], z - cgMm[2]),
      0,
    );
  return {
    massG,
    cgMm,
    inertiaAboutCgGmm2: {
      xx: sum((_, y, z) => y * y + z * z),
      yy: sum((x, _, z) => x * x + z * z),
      zz: sum((x, y) => x * x + y * y),
      xy: -sum((x, y) => x * y),
      xz: -sum((x, _, z) => x * z),
      yz: -sum((_, y, z) => y * z),
    },
  };
}
