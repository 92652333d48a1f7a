import { stepsDown, stepsUp } from '../../engine/geometry/wholeSteps';
import { bandFromMargins } from '../../engine/wing/margin';
import { pctMacToStation, stationToPctMac } from '../../engine/wing/planform';
import type { Aircraft, Surface, TargetBand } from '../document/types';
import {
  type BandStations,
  bandStations,
  macMode,
  macPlanform,
  macSurface,
  type NeutralPointOnMac,
  wingPlanform,
} from './band';
import { usualMargins } from './marginKind';

/** Where a band starts with nothing known but a wing, % MAC; moved forward of what most would fly. */
const UNKNOWN_PCT = { forward: 22, aft: 30 } as const;
/** And without a wing, mm from the datum: figures to be typed over. */
const UNKNOWN_MM = { forwardMm: 200, aftMm: 220 } as const;

/**
 * The aircraft with its band stated another way. A band there is stays where it is; a fresh one comes from the
 * estimated neutral point and the margin wanted, or what is usual for the kind.
 */
export function withBandBy(
  aircraft: Aircraft,
  by: TargetBand['by'] | 'none',
  estimate: NeutralPointOnMac | null,
): Aircraft {
  if (by === 'none') return { ...aircraft, targetBand: null };
  const stations = bandStations(aircraft) ?? freshStations(aircraft, estimate);
  // The load state that the limits hold for stays, however they are stated.
  const { statedFor } = aircraft.targetBand ?? {};
  const state = statedFor && { statedFor };
  if (by === 'station') return { ...aircraft, targetBand: { by, ...toTenths(stations), ...state } };
  const surface = macSurface(aircraft) ?? largestSurface(aircraft);
  // Whether the wing is taken gross or exposed must not change with the way the band is stated.
  const kept = { ...aircraft, stability: { ...aircraft.stability, mac: macMode(aircraft) } };
  const mac = surface && macPlanform(kept, surface);
  if (!surface || !mac) return aircraft;
  const pct = (mm: number) => stationToPctMac(mac, mm);
  const inside = inTenths(pct(stations.forwardMm), pct(stations.aftMm));
  return {
    ...kept,
    targetBand: { by, surfaceId: surface.id, forwardPct: inside[0], aftPct: inside[1], ...state },
  };
}

function freshStations(aircraft: Aircraft, estimate: NeutralPointOnMac | null): BandStations {
  if (estimate) {
    const range = aircraft.stability?.marginRange ?? usualMargins(aircraft);
    return bandFromMargins(estimate.neutralPointMm, estimate.macMm, range);
  }
  const mac = wingPlanform(aircraft);
  if (!mac) return UNKNOWN_MM;
  return {
    forwardMm: pctMacToStation(mac, UNKNOWN_PCT.forward),
    aftMm: pctMacToStation(mac, UNKNOWN_PCT.aft),
  };
}

function largestSurface(aircraft: Aircraft): Surface | null {
  const areaMm2 = (surface: Surface) => macPlanform(aircraft, surface)?.areaMm2 ?? 0;
  const surfaces = aircraft.structure.filter((piece) => piece.kind === 'surface');
  return surfaces.toSorted((a, b) => areaMm2(b) - areaMm2(a))[0] ?? null;
}

const toTenths = ({ forwardMm, aftMm }: BandStations): BandStations => {
  const [forward, aft] = inTenths(forwardMm, aftMm);
  return { forwardMm: forward, aftMm: aft };
};

/** Rounded into the band: never farther aft, never farther forward. What is a tenth already stays. */
function inTenths(forward: number, aft: number): readonly [number, number] {
  return [stepsUp(forward * 10) / 10, stepsDown(aft * 10) / 10];
}
