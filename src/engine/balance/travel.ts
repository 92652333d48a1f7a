import type { Vec3 } from '../geometry/types';
import type { MassProperties } from '../mass/types';

/** A mass and its first moment Σ m·r about the datum, g and g·mm. As a difference both may be less than nothing. */
export interface MassMoment {
  readonly massG: number;
  readonly momentGmm: Vec3;
}

/** What is in the tanks at one moment of the burn: the fraction of usable liquid left and its mass. */
export interface LiquidMoment extends MassMoment {
  /** Usable liquid left, 1 full to 0 dry. */
  readonly fuelFraction: number;
  /** The same tank by tank, where it is known. */
  readonly byTank?: readonly MassMoment[];
}

/** Mass and first moment of a body; no mass has no moment. */
export const momentOf = ({ massG, cgMm }: MassProperties): MassMoment => ({
  massG,
  momentGmm: cgMm === null ? [0, 0, 0] : [massG * cgMm[0], massG * cgMm[1], massG * cgMm[2]],
});

/** One point of the CG travel, aircraft frame. */
export interface TravelPoint {
  readonly fuelFraction: number;
  readonly massG: number;
  readonly cgMm: Vec3;
}

/**
 * The path of the CG over the burn: everything that does not burn, plus the liquid at each moment.
 * A moment without any mass is left out, since no mass gives no CG.
 */
export function cgTravel(fixed: MassProperties, moments: readonly LiquidMoment[]): TravelPoint[] {
  const [fx, fy, fz] = fixed.cgMm ?? [0, 0, 0];
  const [mx, my, mz] = [fx * fixed.massG, fy * fixed.massG, fz * fixed.massG];
  const travel: TravelPoint[] = [];
  for (const { fuelFraction, massG: liquidG, momentGmm: l } of moments) {
    const massG = fixed.massG + liquidG;
    if (massG <= 0) continue;
    travel.push({
      fuelFraction,
      massG,
      cgMm: [(mx + l[0]) / massG, (my + l[1]) / massG, (mz + l[2]) / massG],
    });
  }
  return travel;
}

/** The foremost and aftmost points of a travel along the station axis; null for an empty travel. */
export function travelExtremes(
  travel: readonly TravelPoint[],
): { readonly foremost: TravelPoint; readonly aftmost: TravelPoint } | null {
  const first = travel[0];
  if (!first) return null;
  let foremost = first;
  let aftmost = first;
  for (const point of travel) {
    if (point.cgMm[0] < foremost.cgMm[0]) foremost = point;
    if (point.cgMm[0] > aftmost.cgMm[0]) aftmost = point;
  }
  return { foremost, aftmost };
}
