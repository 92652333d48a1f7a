import type { Vec3 } from '../geometry/types';
import type { Shape } from './shapes';
import { panelSections } from './solids/panel';

/** The box round a shape along its own axes, mm. */
export interface Bounds {
  readonly minMm: Vec3;
  readonly maxMm: Vec3;
}

/** The tight box round a shape, in its own frame. */
export function shapeBounds(shape: Shape): Bounds {
  switch (shape.kind) {
    case 'box':
    case 'ellipsoid':
      return centred(shape.lengthMm, shape.widthMm, shape.heightMm);
    case 'taperedBox':
      return centred(
        shape.lengthMm,
        Math.max(shape.frontWidthMm, shape.rearWidthMm),
        Math.max(shape.frontHeightMm, shape.rearHeightMm),
      );
    case 'cylinder':
    case 'capsule':
      return centred(shape.lengthMm, shape.diameterMm, shape.diameterMm);
    case 'tube':
      return centred(shape.lengthMm, shape.outerDiameterMm, shape.outerDiameterMm);
    case 'frustum': {
      const widest = Math.max(shape.frontDiameterMm, shape.rearDiameterMm);
      return centred(shape.lengthMm, widest, widest);
    }
    case 'sphere':
      return centred(shape.diameterMm, shape.diameterMm, shape.diameterMm);
    case 'prism': {
      const half = shape.lengthMm / 2;
      return around(
        shape.outlineMm.flatMap(([y, z]): Vec3[] => [
          [-half, y, z],
          [half, y, z],
        ]),
      );
    }
    case 'loft':
      return around(
        shape.sections.flatMap((s): Vec3[] => [
          [s.xMm, s.centreYMm - s.widthMm / 2, s.centreZMm - s.heightMm / 2],
          [s.xMm, s.centreYMm + s.widthMm / 2, s.centreZMm + s.heightMm / 2],
        ]),
      );
    case 'panel': {
      const { root, tip } = panelSections(shape);
      const at =
        (y: number) =>
        ([x, z]: readonly [number, number]): Vec3 => [x, y, z];
      return around([...root.map(at(0)), ...tip.map(at(shape.spanMm))]);
    }
    case 'mesh':
      return around(shape.verticesMm);
  }
}

const centred = (length: number, width: number, height: number): Bounds => ({
  minMm: [-length / 2, -width / 2, -height / 2],
  maxMm: [length / 2, width / 2, height / 2],
});

/** The box round some points; round none it is the origin. */
export function around(points: readonly Vec3[]): Bounds {
  const first = points[0] ?? [0, 0, 0];
  let [ax, ay, az] = first;
  let [bx, by, bz] = first;
  for (const [x, y, z] of points) {
    ax = Math.min(ax, x);
    ay = Math.min(ay, y);
    az = Math.min(az, z);
    bx = Math.max(bx, x);
    by = Math.max(by, y);
    bz = Math.max(bz, z);
  }
  return { minMm: [ax, ay, az], maxMm: [bx, by, bz] };
}
