import { perObject, perObjects } from '../../engine/memory/memory';
import { grossPlanform } from '../../engine/wing/grossPlanform';
import { bandFromMargins } from '../../engine/wing/margin';
import { type Planform, pctMacToStation, planform } from '../../engine/wing/planform';
import type { Aircraft, Surface } from '../document/types';
import { rootCarries } from './hull';
import { liftingId, liftingSurface, liftingSurfaces } from './liftingSurfaces';

/** The stations between which the CG must stay, mm aft of the datum. */
export interface BandStations {
  readonly forwardMm: number;
  readonly aftMm: number;
}

/**
 * Area, span, MAC and LEMAC of one surface; the same object again while the surface is unchanged.
 * Throws on impossible geometry.
 */
const surfacePlanform = perObject((surface: Surface): Planform => planform(liftingSurface(surface)));

/** `gross`: through the body, and with the pieces that share its edges, as on plans. `exposed`: the surface as drawn. */
export type MacMode = 'gross' | 'exposed';

/**
 * The planform % MAC is read on: as the file says, else gross. A band in % MAC from before there was a choice
 * was meant on the exposed wing, and stays there.
 */
export function macMode({ stability, targetBand }: Aircraft): MacMode {
  return stability?.mac ?? (targetBand?.by === 'mac' ? 'exposed' : 'gross');
}

/** A surface's planform as % MAC takes it; null for impossible geometry, which a drag may pass through. */
export function macPlanform(aircraft: Aircraft, surface: Surface): Planform | null {
  try {
    const found = macMode(aircraft) === 'gross' ? gross(aircraft.structure, surface.id) : null;
    return found ?? surfacePlanform(surface);
  } catch {
    return null;
  }
}

const gross = perObjects((structure: Aircraft['structure'], surfaceId: string): Planform | null =>
  grossPlanform(liftingId(structure, surfaceId), liftingSurfaces({ structure }), rootCarries(structure)),
);

/**
 * The planform that % MAC is read on: the surface the target band names, or else the largest wing.
 * Null for an aircraft without a wing, or with one of impossible geometry.
 */
export function wingPlanform(aircraft: Aircraft): Planform | null {
  const surface = macSurface(aircraft);
  return surface && macPlanform(aircraft, surface);
}

/** The target band in stations, % MAC turned into mm; null when there is none or its surface has no planform. */
export function bandStations(aircraft: Aircraft): BandStations | null {
  const { targetBand, structure } = aircraft;
  if (!targetBand) return null;
  if (targetBand.by === 'station') return { forwardMm: targetBand.forwardMm, aftMm: targetBand.aftMm };
  const surface = structure.find((element) => element.id === targetBand.surfaceId);
  if (surface?.kind !== 'surface') return null;
  const mac = macPlanform(aircraft, surface);
  if (!mac) return null;
  return {
    forwardMm: pctMacToStation(mac, targetBand.forwardPct),
    aftMm: pctMacToStation(mac, targetBand.aftPct),
  };
}

/** What a band needs to know of the estimate of the neutral point. */
export interface NeutralPointOnMac {
  readonly neutralPointMm: number;
  readonly macMm: number;
}

/** The band that the margin wanted makes of an estimated neutral point; null without either. */
export function estimatedBandStations(
  { stability }: Aircraft,
  estimate: NeutralPointOnMac | null,
): BandStations | null {
  const range = stability?.marginRange;
  if (!range || !estimate || !(range.minPct < range.maxPct)) return null;
  return bandFromMargins(estimate.neutralPointMm, estimate.macMm, range);
}

/** The surface that % MAC is read on; null for an aircraft without a wing. */
export function macSurface({ targetBand, structure }: Aircraft): Surface | null {
  const surfaces = structure.filter((element) => element.kind === 'surface');
  if (targetBand?.by === 'mac') return surfaces.find(({ id }) => id === targetBand.surfaceId) ?? null;
  const wings = surfaces.filter(({ role }) => role === 'wing');
  const areaMm2 = (wing: Surface) => {
    try {
      return surfacePlanform(wing).areaMm2;
    } catch {
      return 0;
    }
  };
  return wings.reduce<Surface | null>(
    (largest, wing) => (largest && areaMm2(largest) >= areaMm2(wing) ? largest : wing),
    null,
  );
}
