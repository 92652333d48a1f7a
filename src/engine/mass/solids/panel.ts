import { cosDeg, sinDeg } from '../../geometry/angle';
import { type Corner, polygonMoments } from '../../geometry/polygon';
import type { Vec3 } from '../../geometry/types';
import { aerofoilOutline } from '../aerofoil';
import { gaussRule } from '../gauss';
import { type Moments, noMoments, surfaceFromMoments, volumeFromMoments } from '../moments';
import { addPatch } from '../patch';
import type { PanelShape } from '../shapes';
import type { SurfaceProperties, VolumeProperties } from '../types';

const rule = gaussRule(3);

/** A panel's root and tip sections as [x, z] corners, mm, like corners matching; counterclockwise about +y. */
export function panelSections(shape: PanelShape): { readonly root: Corner[]; readonly tip: Corner[] } {
  const { rootChordMm, tipChordMm, sweepMm, riseMm } = shape;
  return {
    root: placed(aerofoilOutline(shape.rootThickness), rootChordMm, 0, 0, shape.rootTwistDeg),
    tip: placed(aerofoilOutline(shape.tipThickness), tipChordMm, sweepMm, riseMm, shape.tipTwistDeg),
  };
}

/** Scaled to its chord, turned nose up about its quarter-chord point, leading edge (before twist) at x, z. */
function placed(outline: Corner[], chord: number, x: number, z: number, twistDeg: number): Corner[] {
  const cos = cosDeg(twistDeg);
  const sin = sinDeg(twistDeg);
  return outline.map(([u, v]): Corner => {
    const aft = chord * (u - 0.25);
    const up = chord * v;
    return [x + chord * 0.25 + aft * cos + up * sin, z - aft * sin + up * cos];
  });
}

/** The section a share `s` of the way out. */
export const panelSectionAt = (root: readonly Corner[], tip: readonly Corner[], s: number): Corner[] =>
  root.map(([x, z], i): Corner => {
    const [tx, tz] = tip[i]!;
    return [x + (tx - x) * s, z + (tz - z) * s];
  });

/** Where the sums are taken: mid span, between the two quarter-chord points. */
const middle = ({ spanMm, rootChordMm, tipChordMm, sweepMm, riseMm }: PanelShape): Vec3 => [
  (rootChordMm * 0.25 + sweepMm + tipChordMm * 0.25) / 2,
  spanMm / 2,
  riseMm / 2,
];

/** Adds the area moments of a section at height y over the middle, times `weight`. */
function addSection(into: Moments, outline: readonly Corner[], y: number, weight: number, about: Vec3): void {
  // The corners run counterclockwise about +y, which is clockwise from x to z: the signs turn over.
  const { area, u, v, uu, uv, vv } = polygonMoments(outline, about[0], about[2]);
  into.m -= weight * area;
  into.x -= weight * u;
  into.y -= weight * area * y;
  into.z -= weight * v;
  into.xx -= weight * uu;
  into.yy -= weight * area * y * y;
  into.zz -= weight * vv;
  into.xy -= weight * u * y;
  into.xz -= weight * uv;
  into.yz -= weight * v * y;
}

/** Solid panel. Section moments are polynomials of degree 4 in the span; three points are exact to 5. */
export function panelVolume(shape: PanelShape): VolumeProperties {
  const { root, tip } = panelSections(shape);
  const about = middle(shape);
  const sums = noMoments();
  for (const { at, weight } of rule) {
    const y = shape.spanMm * at - about[1];
    addSection(sums, panelSectionAt(root, tip, at), y, weight * shape.spanMm, about);
  }
  return volumeFromMoments(sums, about);
}

/**
 * Skin of a panel, closed: the covering over the aerofoil and both ribs, root and tip.
 * Each strip of the covering is a ruled patch, by quadrature to about 1e-11.
 */
export function panelSurface(shape: PanelShape): SurfaceProperties {
  const { root, tip } = panelSections(shape);
  const about = middle(shape);
  const sums = noMoments();
  addSection(sums, root, -about[1], 1, about);
  addSection(sums, tip, shape.spanMm - about[1], 1, about);
  root.forEach((corner, i) => {
    const next = (i + 1) % root.length;
    addStrip(sums, [corner, root[next]!, tip[i]!, tip[next]!], shape.spanMm, about);
  });
  return surfaceFromMoments(sums, about);
}

/** The ruled patch between the edge a–b at the root and c–d at the tip: u along the edge, v out along the span. */
function addStrip(
  into: Moments,
  [a, b, c, d]: readonly [Corner, Corner, Corner, Corner],
  span: number,
  about: Vec3,
) {
  addPatch(into, (u, v, out) => {
    const rootX = a[0] + (b[0] - a[0]) * u;
    const rootZ = a[1] + (b[1] - a[1]) * u;
    const outX = c[0] + (d[0] - c[0]) * u - rootX;
    const outZ = c[1] + (d[1] - c[1]) * u - rootZ;
    const edgeX = (b[0] - a[0]) * (1 - v) + (d[0] - c[0]) * v;
    const edgeZ = (b[1] - a[1]) * (1 - v) + (d[1] - c[1]) * v;
    out.x = rootX + outX * v - about[0];
    out.y = span * v - about[1];
    out.z = rootZ + outZ * v - about[2];
    out.element = Math.hypot(span * edgeX, span * edgeZ, edgeZ * outX - edgeX * outZ);
  });
}
