import { stepsDown, stepsUp } from '../../engine/geometry/wholeSteps';
import { stationToPctMac } from '../../engine/wing/planform';
import type { Aircraft } from '../document/types';
import { bandStations, type MacMode, wingPlanform } from './band';

/** The aircraft with % MAC read on the other planform; limits in % MAC are rewritten so that they stay where they are. */
export function withMacMode(aircraft: Aircraft, mac: MacMode): Aircraft {
  const changed = { ...aircraft, stability: { ...aircraft.stability, mac } };
  const { targetBand } = aircraft;
  if (targetBand?.by !== 'mac') return changed;
  const stations = bandStations(aircraft);
  const planform = wingPlanform(changed);
  if (!stations || !planform) return changed;
  return {
    ...changed,
    targetBand: {
      ...targetBand,
      // Rounded into the band, by less than anybody can measure.
      forwardPct: stepsUp(100 * stationToPctMac(planform, stations.forwardMm)) / 100,
      aftPct: stepsDown(100 * stationToPctMac(planform, stations.aftMm)) / 100,
    },
  };
}
