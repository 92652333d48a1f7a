import { cgShiftForFuel, sensitivities } from '../../engine/balance/sensitivity';
import type { Vec3 } from '../../engine/geometry/types';
import { massSum } from '../../engine/mass/massProperties';
import { lastOnly } from '../../engine/memory/memory';
import type { Balance } from '../balance/balance';
import { liquidMoment, liquidStatesAt } from '../balance/liquidTable';

/** What the CG makes of one item aboard. */
export interface SensitivityRow {
  readonly id: string;
  readonly name: string;
  /** CG shift for 10 g more of it where it is, mm: station, buttline, waterline. */
  readonly per10GMm: Vec3;
  /** CG shift along any axis for 10 mm of its move along it, mm. */
  readonly per10MmMm: number;
}

/** The sensitivity of the CG to everything aboard, an element's sides and pieces as one, the strongest first. */
export const sensitivityRows = lastOnly((balance: Balance): readonly SensitivityRow[] => {
  const names = new Map(balance.bodies.map(({ sourceId, name }) => [sourceId, name]));
  const things = [...names.keys()].map((id) => ({
    id,
    mass: massSum(balance.bodies.filter(({ sourceId }) => sourceId === id).map(({ mass }) => mass)),
  }));
  return sensitivities(balance, things)
    .flatMap(({ id, per10GMm, per10MmMm }) =>
      per10GMm ? [{ id, name: names.get(id) ?? id, per10GMm, per10MmMm }] : [],
    )
    .sort((a, b) => b.per10MmMm - a.per10MmMm);
});

/** How far the CG goes when 100 ml more is drawn, or what is left if that is less; null when nothing is left. */
export function fuelSensitivity(balance: Balance, down: Vec3) {
  const { plumbing } = balance.liquid;
  if (!plumbing || balance.usableMl === 0) return null;
  return cgShiftForFuel({
    fixed: massSum(balance.bodies.map(({ mass }) => mass)),
    liquidAt: (fraction) => liquidMoment(fraction, liquidStatesAt(plumbing, fraction, down)),
    usableMl: balance.usableMl,
    fuelFraction: balance.remainingMl / balance.usableMl,
  });
}
