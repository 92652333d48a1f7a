import type { Vec3 } from '../../geometry/types';
import { gaussRule } from '../gauss';
import { type Moments, noMoments, surfaceFromMoments, volumeFromMoments } from '../moments';
import { addPatch } from '../patch';
import { roundedArea, roundedSecond } from '../roundedRectangle';
import type { LoftSection, LoftShape } from '../shapes';
import type { SurfaceProperties, VolumeProperties } from '../types';

const rule = gaussRule(5);

/** The section a share `t` of the way from one to the next; every measure runs linearly. */
export function sectionBetween(from: LoftSection, to: LoftSection, t: number): LoftSection {
  return {
    xMm: from.xMm + (to.xMm - from.xMm) * t,
    widthMm: from.widthMm + (to.widthMm - from.widthMm) * t,
    heightMm: from.heightMm + (to.heightMm - from.heightMm) * t,
    centreYMm: from.centreYMm + (to.centreYMm - from.centreYMm) * t,
    centreZMm: from.centreZMm + (to.centreZMm - from.centreZMm) * t,
    roundness: from.roundness + (to.roundness - from.roundness) * t,
  };
}

/** A section seen from a point near the loft. */
const seenFrom = (section: LoftSection, [x, y, z]: Vec3): LoftSection => ({
  ...section,
  xMm: section.xMm - x,
  centreYMm: section.centreYMm - y,
  centreZMm: section.centreZMm - z,
});

/** Halfway along, on the line of centres of the first section: where the sums are taken. */
function middle({ sections }: LoftShape): Vec3 {
  const first = sections[0];
  const last = sections.at(-1);
  if (!first || !last) return [0, 0, 0];
  return [(first.xMm + last.xMm) / 2, first.centreYMm, first.centreZMm];
}

const seenSections = (shape: LoftShape, about: Vec3): LoftSection[] =>
  shape.sections.map((section) => seenFrom(section, about));

/** Adds the section's plane area moments, times `weight`. */
function addSection(into: Moments, section: LoftSection, weight: number): void {
  const { xMm: x, centreYMm: y, centreZMm: z, roundness } = section;
  const a = section.widthMm / 2;
  const b = section.heightMm / 2;
  const m = weight * a * b * roundedArea(roundness);
  const second = weight * a * b * roundedSecond(roundness);
  into.m += m;
  into.x += m * x;
  into.y += m * y;
  into.z += m * z;
  into.xx += m * x * x;
  into.yy += m * y * y + second * a * a;
  into.zz += m * z * z + second * b * b;
  into.xy += m * x * y;
  into.xz += m * x * z;
  into.yz += m * y * z;
}

/** Solid loft. Along x the section moments are polynomials of degree 8 at most; five points are exact to 9. */
export function loftVolume(shape: LoftShape): VolumeProperties {
  const about = middle(shape);
  const sections = seenSections(shape, about);
  const sums = noMoments();
  sections.slice(1).forEach((to, i) => {
    const from = sections[i]!;
    for (const { at, weight } of rule) {
      addSection(sums, sectionBetween(from, to, at), weight * (to.xMm - from.xMm));
    }
  });
  return volumeFromMoments(sums, about);
}

/** Skin of a loft with its two end faces. Flat strips exact, rounded corners by quadrature to about 1e-11. */
export function loftSurface(shape: LoftShape): SurfaceProperties {
  const about = middle(shape);
  const sections = seenSections(shape, about);
  const sums = noMoments();
  for (const end of [sections[0], sections.at(-1)]) if (end) addSection(sums, end, 1);
  sections.slice(1).forEach((to, i) => {
    const from = sections[i]!;
    addFlats(sums, from, to);
    for (const sy of [1, -1]) for (const sz of [1, -1]) addCorner(sums, from, to, sy, sz);
  });
  return surfaceFromMoments(sums, about);
}

/** The four strips between the corners. Each is flat, 2p wide; its sums are polynomials along x. */
function addFlats(into: Moments, from: LoftSection, to: LoftSection): void {
  const run = to.xMm - from.xMm;
  const slope = (side: number, size: 'widthMm' | 'heightMm', centre: 'centreYMm' | 'centreZMm') =>
    Math.hypot(run, to[centre] - from[centre] + (side * (to[size] - from[size])) / 2);
  for (const { at, weight } of rule) {
    const section = sectionBetween(from, to, at);
    const { xMm: x, centreYMm: y, centreZMm: z, roundness } = section;
    const a = section.widthMm / 2;
    const b = section.heightMm / 2;
    for (const side of [1, -1]) {
      const across = a * (1 - roundness);
      addStrip(into, weight * slope(side, 'heightMm', 'centreZMm'), x, y, z + side * b, across, 0);
      const upright = b * (1 - roundness);
      addStrip(into, weight * slope(side, 'widthMm', 'centreYMm'), x, y + side * a, z, 0, upright);
    }
  }
}

/** A line of half length p (along y) or q (along z) centred on (x, y, z). */
function addStrip(into: Moments, ds: number, x: number, y: number, z: number, p: number, q: number): void {
  const m = 2 * (p + q) * ds;
  into.m += m;
  into.x += m * x;
  into.y += m * y;
  into.z += m * z;
  into.xx += m * x * x;
  into.yy += m * (y * y + (p * p) / 3);
  into.zz += m * (z * z + (q * q) / 3);
  into.xy += m * x * y;
  into.xz += m * x * z;
  into.yz += m * y * z;
}

/** The rounded corner on side sy, sz: u along x, v round the quarter ellipse. */
function addCorner(into: Moments, from: LoftSection, to: LoftSection, sy: number, sz: number): void {
  if (from.roundness === 0 && to.roundness === 0) return;
  const quarter = Math.PI / 2;
  const dx = to.xMm - from.xMm;
  const da = (to.widthMm - from.widthMm) / 2;
  const db = (to.heightMm - from.heightMm) / 2;
  const dr = to.roundness - from.roundness;
  addPatch(into, (u, v, out) => {
    const a = from.widthMm / 2 + da * u;
    const b = from.heightMm / 2 + db * u;
    const r = from.roundness + dr * u;
    const cos = Math.cos(v * quarter);
    const sin = Math.sin(v * quarter);
    const alongY = to.centreYMm - from.centreYMm + sy * (da * (1 - r + r * cos) - a * dr * (1 - cos));
    const alongZ = to.centreZMm - from.centreZMm + sz * (db * (1 - r + r * sin) - b * dr * (1 - sin));
    const roundY = -sy * a * r * sin * quarter;
    const roundZ = sz * b * r * cos * quarter;
    out.x = from.xMm + dx * u;
    out.y = from.centreYMm + (to.centreYMm - from.centreYMm) * u + sy * a * (1 - r + r * cos);
    out.z = from.centreZMm + (to.centreZMm - from.centreZMm) * u + sz * b * (1 - r + r * sin);
    out.element = Math.hypot(alongY * roundZ - alongZ * roundY, dx * roundY, dx * roundZ);
  });
}
