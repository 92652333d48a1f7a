import { type Planform, pctMacToStation, planform } from '../engine/wing/planform';
import { liftingSurface } from './liftingSurfaces';
import type { Aircraft, Surface } from './types';

/** The stations between which the CG must stay, mm aft of the datum. */
export interface BandStations {
  readonly forwardMm: number;
  readonly aftMm: number;
}

const planforms = new WeakMap<Surface, Planform>();

/** Area, span, MAC and LEMAC of one surface; the same object again while the surface is unchanged. */
export function surfacePlanform(surface: Surface): Planform {
  let found = planforms.get(surface);
  if (!found) {
    found = planform(liftingSurface(surface));
    planforms.set(surface, found);
  }
  return found;
}

/**
 * The planform that % MAC is read on: the surface the target band names, or else the largest wing.
 * Null for an aircraft without a wing.
 */
export function wingPlanform(aircraft: Aircraft): Planform | null {
  const surface = macSurface(aircraft);
  return surface ? surfacePlanform(surface) : null;
}

/** The target band in stations, % MAC turned into mm; null when there is none. */
export function bandStations({ targetBand, structure }: Aircraft): BandStations | null {
  if (!targetBand) return null;
  if (targetBand.by === 'station') return { forwardMm: targetBand.forwardMm, aftMm: targetBand.aftMm };
  const surface = structure.find((element) => element.id === targetBand.surfaceId);
  if (surface?.kind !== 'surface') return null;
  const mac = surfacePlanform(surface);
  return {
    forwardMm: pctMacToStation(mac, targetBand.forwardPct),
    aftMm: pctMacToStation(mac, targetBand.aftPct),
  };
}

function macSurface({ targetBand, structure }: Aircraft): Surface | null {
  const surfaces = structure.filter((element) => element.kind === 'surface');
  if (targetBand?.by === 'mac') return surfaces.find(({ id }) => id === targetBand.surfaceId) ?? null;
  const wings = surfaces.filter(({ role }) => role === 'wing');
  return wings.reduce<Surface | null>(
    (largest, wing) =>
      largest && surfacePlanform(largest).areaMm2 >= surfacePlanform(wing).areaMm2 ? largest : wing,
    null,
  );
}
