import { noMoments, surfaceFromMoments } from '../moments';
import { addPatch } from '../patch';
import type { EllipsoidShape } from '../shapes';
import { diagonalTensor } from '../tensor';
import type { SurfaceProperties, VolumeProperties } from '../types';

/** Solid ellipsoid of semi-axes a, b, c: V = 4πabc/3, Ixx = V(b² + c²)/5 and so on round. */
export function ellipsoidVolume({ lengthMm, widthMm, heightMm }: EllipsoidShape): VolumeProperties {
  const [a, b, c] = [lengthMm / 2, widthMm / 2, heightMm / 2];
  const volumeMm3 = (4 / 3) * Math.PI * a * b * c;
  const fifth = volumeMm3 / 5;
  return {
    volumeMm3,
    centroidMm: volumeMm3 === 0 ? null : [0, 0, 0],
    inertiaAboutCentroidMm5: diagonalTensor(
      fifth * (b * b + c * c),
      fifth * (a * a + c * c),
      fifth * (a * a + b * b),
    ),
  };
}

/** Skin of an ellipsoid: one eighth by quadrature (no elementary form exists), the rest by symmetry. */
export function ellipsoidSurface({ lengthMm, widthMm, heightMm }: EllipsoidShape): SurfaceProperties {
  const [a, b, c] = [lengthMm / 2, widthMm / 2, heightMm / 2];
  const octant = noMoments();
  const quarter = Math.PI / 2;
  addPatch(octant, (u, v, out) => {
    const [cu, su] = [Math.cos(u * quarter), Math.sin(u * quarter)];
    const [cv, sv] = [Math.cos(v * quarter), Math.sin(v * quarter)];
    out.x = a * cu;
    out.y = b * su * cv;
    out.z = c * su * sv;
    out.element = quarter * quarter * su * Math.hypot(b * c * cu, a * c * su * cv, a * b * su * sv);
  });
  const all = noMoments();
  all.m = 8 * octant.m;
  all.xx = 8 * octant.xx;
  all.yy = 8 * octant.yy;
  all.zz = 8 * octant.zz;
  return surfaceFromMoments(all, [0, 0, 0]);
}
