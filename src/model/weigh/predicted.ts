import { cosDeg, sinDeg } from '../../engine/geometry/angle';
import type { Vec3 } from '../../engine/geometry/types';
import type { ScaleReading } from '../document/types';

type Flat = readonly [number, number];

/**
 * What each scale should read, tare apart, g, by moments about the supports as they stand at the pitch. Null for more than three
 * scales, where statics alone does not say, and where the CG is thought to be nowhere.
 */
export function predictedLoads(
  supports: readonly Pick<ScaleReading, 'supportMm'>[],
  { massG, cgMm }: { readonly massG: number; readonly cgMm: Vec3 | null },
  pitchDeg: number,
): readonly number[] | null {
  if (!cgMm) return null;
  const flat = ([x, y, z]: Vec3): Flat => [x * cosDeg(pitchDeg) + z * sinDeg(pitchDeg), y];
  const [a, b, c] = supports.map(({ supportMm }) => flat(supportMm));
  const g = flat(cgMm);
  if (supports.length === 2 && a && b) {
    const rear = (massG * (g[0] - a[0])) / (b[0] - a[0]);
    return [massG - rear, rear].every(Number.isFinite) ? [massG - rear, rear] : null;
  }
  if (supports.length !== 3 || !a || !b || !c) return null;
  const area = (p: Flat, q: Flat, r: Flat) => (q[0] - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (q[1] - p[1]);
  const loads = [area(g, b, c), area(a, g, c), area(a, b, g)].map((part) => (massG * part) / area(a, b, c));
  return loads.every(Number.isFinite) ? loads : null;
}

/** What the scale under one of two axles reads with the aircraft turned about the other one, tare apart, g; + where the CG is on its side. */
export function predictedTilt(
  pivotMm: Vec3,
  otherMm: Vec3,
  { massG, cgMm }: { readonly massG: number; readonly cgMm: Vec3 | null },
  pitchDeg: number,
): number | null {
  if (!cgMm) return null;
  const aft = ([x, , z]: Vec3) => x * cosDeg(pitchDeg) + z * sinDeg(pitchDeg);
  const grams = (massG * (aft(cgMm) - aft(pivotMm))) / (aft(otherMm) - aft(pivotMm));
  return Number.isFinite(grams) ? grams : null;
}
