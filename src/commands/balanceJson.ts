import { bareAirframeDifference } from '../model/airframe/bodies';
import type { Balance } from '../model/balance/balance';
import type { Aircraft } from '../model/document/types';
import { attitudeName, downOf } from '../model/loads/attitude';
import { balanceRows } from './balanceRows';
import { loadReport } from './loadReport';
import type { TableOptions } from './tableOptions';
import { verdictOf } from './verdictOf';

/**
 * The balance as JSON, mm and g from the datum. `inertiaAboutCgGmm2` holds tensor elements: xy = −∫xy dm.
 * `neutralPointMm` and the margins (% MAC) are estimates; null without.
 * `parts` are all the lines of the sum, structure, tanks and liquids included. The ends of `travel` are certain to
 * `travelWithinMm`; `loadStates` are those at the ends of the range over every switch and all fuel, certain to `withinMm`.
 * `verdict` is the answer in words over every load state, its remedy's edits in mm and g.
 */
export function balanceJson(
  aircraft: Aircraft,
  balance: Balance,
  {
    fuelFraction,
    attitude,
    estimating = 'done',
  }: Pick<TableOptions, 'fuelFraction' | 'attitude' | 'estimating'>,
): string {
  const { massG, cgMm, inertiaAboutCgGmm2, usableMl, remainingMl, band, travel, estimate, margin } = balance;
  const { fix, ...answer } = verdictOf(aircraft, balance, {
    attitude,
    system: 'metric',
    from: null,
    estimating,
  });
  const report = {
    name: aircraft.name,
    fuelFraction,
    attitude: { name: attitudeName(attitude), ...attitude },
    massG,
    cgMm,
    inertiaAboutCgGmm2,
    usableMl,
    remainingMl,
    band,
    bandFrom: balance.bandFrom,
    neutralPointMm: estimate?.neutralPointMm ?? null,
    staticMarginPct: margin?.nowPct ?? null,
    leastStaticMarginPct: margin?.leastPct ?? null,
    verdict: {
      ...answer,
      fix: fix && { label: fix.label, consequence: fix.consequence, edits: fix.remedy?.edits ?? [] },
    },
    bareAirframeDifference: bareAirframeDifference(aircraft),
    parts: balanceRows(aircraft, balance),
    travel: travel.map((point) => ({
      fuelFraction: point.fuelFraction,
      massG: point.massG,
      cgMm: point.cgMm,
    })),
    travelWithinMm: balance.travelWithinMm,
    feedFaults: balance.liquid.feedFaults,
    ...loadReport(aircraft, downOf(attitude)),
  };
  return `${JSON.stringify(report, null, 2)}\n`;
}
