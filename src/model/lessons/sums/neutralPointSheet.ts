import type { Balance } from '../../balance/balance';
import { formatNumber, ownUnit, shownPlaces, type UnitSystem } from '../../units';
import { calculatorFigures } from '../../words/calculatorSum';
import type { From, WorkingSheet } from '../../words/workingSheet';

/** Where the estimate of the neutral point comes from: the surfaces, and what the body does to them. */
export function neutralPointSheet({ estimate }: Balance, units: UnitSystem, from: From): WorkingSheet | null {
  if (!estimate) return null;
  const arm = ownUnit('length', units);
  const shown = shownPlaces('length', units, true);
  const surfacesMm = estimate.neutralPointMm - estimate.fuselageShiftMm;
  const { figures, places, result } = calculatorFigures(
    [(surfacesMm - from.mm) / arm.size, estimate.fuselageShiftMm / arm.size],
    ([surfaces = 0, body = 0]) => surfaces + body,
    { figures: shown, result: shown },
  );
  const [surfaces = '', body = ''] = figures.map((figure) => formatNumber(figure, places));
  const signedBody = formatNumber(figures[1] ?? 0, places, true);
  return {
    says: `An estimate. Wing and tail together, then what the body does. Stations from ${from.name}.`,
    head: ['', `Station, ${arm.symbol}`],
    rows: [
      ['Wing and tail', surfaces],
      ['The body moves it', signedBody],
    ],
    total: null,
    steps: [`${surfaces} + (${body}) = ${formatNumber(result, shown)} ${arm.symbol}`],
  };
}
