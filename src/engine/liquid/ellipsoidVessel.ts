import type { Vec3 } from '../geometry/types';
import { noMoments, volumeFromMoments } from '../mass/moments';
import type { VolumeProperties } from '../mass/types';
import type { TiltedVessel, Vessel, WetCut } from './vessel';

/**
 * An ellipsoid (or sphere) with semi-axes a along x, y and z, mm. Stretching each axis by its semi-axis makes it
 * the unit ball and keeps planes planes, so the liquid is a stretched spherical cap.
 *
 * Cap of depth d on the unit ball (Bronshtein, Handbook of Mathematics, spherical segment):
 * V = π d²(3 − d)/3. Moments follow from discs of radius² s(2 − s) at depth s above the pole.
 */
export function ellipsoidVessel(semiAxesMm: Vec3, full: VolumeProperties): Vessel {
  return { full, tilt: (down) => tiltedEllipsoid(semiAxesMm, down) };
}

function tiltedEllipsoid(a: Vec3, down: Vec3): TiltedVessel {
  const nx = a[0] * down[0];
  const ny = a[1] * down[1];
  const nz = a[2] * down[2];
  const reach = Math.hypot(nx, ny, nz);
  const n: Vec3 = [nx / reach, ny / reach, nz / reach];
  const stretch = a[0] * a[1] * a[2];
  const capDepth = (offsetMm: number) => Math.min(Math.max(1 - offsetMm / reach, 0), 2);

  const cut = (offsetMm: number): WetCut => {
    const d = capDepth(offsetMm);
    return {
      volumeMm3: (stretch * Math.PI * d * d * (3 - d)) / 3,
      surfaceAreaMm2: (stretch / reach) * Math.PI * d * (2 - d),
    };
  };

  const wetted = (offsetMm: number): VolumeProperties => {
    const d = capDepth(offsetMm);
    const area = (Math.PI * d * d * (3 - d)) / 3;
    // ∫s, ∫s² and ∫(across)², s measured up from the pole, over the cap.
    const s1 = Math.PI * d ** 3 * (2 / 3 - d / 4);
    const s2 = Math.PI * d ** 4 * (1 / 2 - d / 5);
    const across = (Math.PI / 4) * d ** 3 * (4 / 3 - d + (d * d) / 5);
    const along = s2 - across;
    const m = noMoments();
    m.m = stretch * area;
    m.x = -stretch * a[0] * n[0] * s1;
    m.y = -stretch * a[1] * n[1] * s1;
    m.z = -stretch * a[2] * n[2] * s1;
    m.xx = stretch * a[0] * a[0] * (across + along * n[0] * n[0]);
    m.yy = stretch * a[1] * a[1] * (across + along * n[1] * n[1]);
    m.zz = stretch * a[2] * a[2] * (across + along * n[2] * n[2]);
    m.xy = stretch * a[0] * a[1] * along * n[0] * n[1];
    m.xz = stretch * a[0] * a[2] * along * n[0] * n[2];
    m.yz = stretch * a[1] * a[2] * along * n[1] * n[2];
    return volumeFromMoments(m, [a[0] * n[0], a[1] * n[1], a[2] * n[2]]);
  };

  return { topMm: -reach, bottomMm: reach, cut, wetted };
}
