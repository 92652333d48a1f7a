import { bareAirframeDifference } from '../model/airframe/bodies';
import type { Balance } from '../model/balance/balance';
import type { Aircraft } from '../model/document/types';
import { balanceRows } from './balanceRows';
import { verdictOf } from './verdictOf';

/**
 * The balance as JSON, mm and g from the datum. `inertiaAboutCgGmm2` holds tensor elements: xy = −∫xy dm.
 * `neutralPointMm` and the margins (% MAC) are estimates; null without.
 * `verdict` is the answer in words over every load state, its remedy's edits in mm and g.
 * `parts` are all the lines of the sum, structure, tanks and liquids included.
 */
export function balanceJson(aircraft: Aircraft, balance: Balance, fuelFraction: number): string {
  const { massG, cgMm, inertiaAboutCgGmm2, usableMl, remainingMl, band, travel, estimate, margin } = balance;
  const { fix, ...answer } = verdictOf(aircraft, balance, 'metric', null);
  const report = {
    name: aircraft.name,
    fuelFraction,
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
  };
  return `${JSON.stringify(report, null, 2)}\n`;
}
