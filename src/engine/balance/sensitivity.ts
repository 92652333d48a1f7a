import type { Vec3 } from '../geometry/types';
import { sub } from '../geometry/vec3';
import type { MassProperties } from '../mass/types';
import { cgTravel, type LiquidMoment } from './travel';

/**
 * How far the CG goes when a body aboard gains `addG` at its own CG, mm: Δm·(r − c)/(M + Δm). Exact, not a slope;
 * take a negative amount for a loss. Null when there is no CG before or after, or the body has no place.
 */
export function cgShiftForMass(total: MassProperties, bodyMm: Vec3 | null, addG: number): Vec3 | null {
  const massG = total.massG + addG;
  if (total.cgMm === null || bodyMm === null || !(massG > 0)) return null;
  const share = addG / massG;
  const [x, y, z] = sub(bodyMm, total.cgMm);
  return [share * x, share * y, share * z];
}

/** How far the CG goes when a body aboard is moved, mm: m/M of its move, exact. Null when there is no CG. */
export function cgShiftForMove(total: MassProperties, bodyG: number, moveMm: Vec3): Vec3 | null {
  if (total.cgMm === null) return null;
  const share = bodyG / total.massG;
  return [share * moveMm[0], share * moveMm[1], share * moveMm[2]];
}

/** What the CG makes of one body. */
export interface Sensitivity {
  readonly id: string;
  /** CG shift for 10 g more at the body's CG, mm; null for a body that has no place. */
  readonly per10GMm: Vec3 | null;
  /** CG shift along any axis for 10 mm of the body's move along it, mm. */
  readonly per10MmMm: number;
}

/** The sensitivity to every body, all of them part of `total`. Empty when there is no CG. */
export function sensitivities(
  total: MassProperties,
  bodies: readonly { readonly id: string; readonly mass: MassProperties }[],
): Sensitivity[] {
  if (total.cgMm === null) return [];
  return bodies.map(({ id, mass }) => ({
    id,
    per10GMm: cgShiftForMass(total, mass.cgMm, 10),
    per10MmMm: (10 * mass.massG) / total.massG,
  }));
}

/** A fuel state from which to draw. */
export interface FuelState {
  /** All but the usable liquid. */
  readonly fixed: MassProperties;
  readonly liquidAt: (fuelFraction: number) => LiquidMoment;
  readonly usableMl: number;
  readonly fuelFraction: number;
}

/**
 * How far the CG goes when 100 ml, or all that is left if that is less, is drawn from the fuel state shown, mm: the CG
 * after less the CG before. Null when nothing is left, or there is no CG before or after.
 */
export function cgShiftForFuel(
  { fixed, liquidAt, usableMl, fuelFraction }: FuelState,
  drawMl = 100,
): { readonly drawnMl: number; readonly shiftMm: Vec3 } | null {
  const drawnMl = Math.min(drawMl, fuelFraction * usableMl);
  if (!(drawnMl > 0)) return null;
  const after = Math.max(0, fuelFraction - drawnMl / usableMl);
  const [from, to] = cgTravel(fixed, [liquidAt(fuelFraction), liquidAt(after)]);
  return from && to ? { drawnMl, shiftMm: sub(to.cgMm, from.cgMm) } : null;
}
