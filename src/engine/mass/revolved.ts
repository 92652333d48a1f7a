import { gaussRule } from './gauss';
import type { Moments } from './moments';

/** Faces of bodies of revolution about the x axis, exact. Radii and stations in mm. */

const rule = gaussRule(3);

/** A hoop of measure `dm` and radius r at x: ∫y² = ∫z² = r² dm / 2. */
function addHoop(into: Moments, dm: number, x: number, r: number): void {
  into.m += dm;
  into.x += dm * x;
  into.xx += dm * x * x;
  into.yy += (dm * r * r) / 2;
  into.zz += (dm * r * r) / 2;
}

/** The flat ring between two radii at x; a disc when the inner one is 0. */
export function addDisc(into: Moments, x: number, outer: number, inner = 0): void {
  const area = Math.PI * (outer - inner) * (outer + inner);
  addHoop(into, area, x, Math.sqrt((outer * outer + inner * inner) / 2));
}

/** The cone band from radius r0 at x0 to r1 at x1. Cubic in the slant, so the rule is exact. */
export function addBand(into: Moments, x0: number, r0: number, x1: number, r1: number): void {
  const slant = Math.hypot(x1 - x0, r1 - r0);
  for (const { at, weight } of rule) {
    const r = r0 + (r1 - r0) * at;
    addHoop(into, weight * slant * 2 * Math.PI * r, x0 + (x1 - x0) * at, r);
  }
}

/** The skin of a sphere of radius r between stations x0 and x1 from its centre, the centre at `cx`. */
export function addZone(into: Moments, cx: number, r: number, x0: number, x1: number): void {
  for (const { at, weight } of rule) {
    const x = x0 + (x1 - x0) * at;
    addHoop(into, weight * (x1 - x0) * 2 * Math.PI * r, cx + x, Math.sqrt(Math.max(0, r * r - x * x)));
  }
}
