import type { Lift, Reason } from '../../engine/place/whyNot';
import { stationToPctMac } from '../../engine/wing/planform';
import { structureById, updatePart } from '../document/edit';
import type { Aircraft, TargetBand } from '../document/types';
import { keepApartRules } from '../fit/keepApart';
import { macPlanform } from '../stability/band';

/** Whether letting it go is an edit of the aircraft: a lead must be cut and measured first. */
export const isEdit = (lift: Lift): boolean => lift.what !== 'lead';

/** The aircraft with everything let go that a reason names, its limits as far as they must give way, to the whole mm upward. */
export function relaxed(
  aircraft: Aircraft,
  { lifts, breachMm }: Pick<Reason, 'lifts' | 'breachMm'>,
): Aircraft {
  // Rules are named by their place in the list, so they all go at once.
  const ruleIds = lifts.flatMap((lift) => (lift.what === 'rule' ? [lift.ruleId] : []));
  const start =
    ruleIds.length > 0
      ? {
          ...aircraft,
          keepApart: keepApartRules(aircraft).filter((_rule, index) => !ruleIds.includes(`rule ${index}`)),
        }
      : aircraft;
  return lifts.reduce((least, lift) => without(least, lift, wholeUp(breachMm)), start);
}

function without(aircraft: Aircraft, lift: Lift, byMm: number): Aircraft {
  switch (lift.what) {
    case 'lock':
      return updatePart(aircraft, lift.partId, { locked: false });
    case 'bay':
      return {
        ...aircraft,
        parts: aircraft.parts.map((part) => {
          if (part.id !== lift.partId) return part;
          const { bayId: _bay, ...loose } = part;
          return loose;
        }),
      };
    case 'limit':
      if (!lift.limits.includes('forward') && !lift.limits.includes('aft')) {
        return { ...aircraft, lateralToleranceMm: aircraft.lateralToleranceMm + byMm };
      }
      return {
        ...aircraft,
        targetBand: aircraft.targetBand && widened(aircraft, aircraft.targetBand, lift.limits, byMm),
      };
    default:
      return aircraft;
  }
}

function widened(aircraft: Aircraft, band: TargetBand, limits: readonly string[], byMm: number): TargetBand {
  const forward = limits.includes('forward') ? byMm : 0;
  const aft = limits.includes('aft') ? byMm : 0;
  if (band.by === 'station') {
    return { ...band, forwardMm: band.forwardMm - forward, aftMm: band.aftMm + aft };
  }
  const surface = structureById(aircraft, band.surfaceId);
  if (surface?.kind !== 'surface') return band;
  const mac = macPlanform(aircraft, surface);
  if (!mac) return band;
  const pct = (mm: number) => stationToPctMac(mac, mac.lemacMm + mm);
  return { ...band, forwardPct: band.forwardPct - pct(forward), aftPct: band.aftPct + pct(aft) };
}

/** To a whole millimetre, with a little over for leads that lie otherwise afterwards. */
const wholeUp = (mm: number) => Math.ceil(mm + 0.2);
