import { itemById } from '../../document/edit';
import { shownText } from '../../document/names';
import { formatNumber, ownUnit, shownPlaces, type UnitSystem } from '../../units';
import { calculatorFigures } from '../../words/calculatorSum';
import type { From, WorkingSheet } from '../../words/workingSheet';
import { benchBalance, type LessonBench } from '../bench';
import { needsEstimate } from '../quantity';
import { solvedFigure, wantedPlace } from '../solved';
import type { Estimator, PartFor } from '../types';

const NO_POINT: From = { name: 'the plane of symmetry', mm: 0 };

/**
 * How a part's mass or place is found: everything else balances it about the wanted CG. Null where none does it, and for a tank
 * with liquid in it, which is more than its own mass.
 */
export function partForSheet(
  bench: LessonBench,
  asked: PartFor,
  estimator: Estimator,
  units: UnitSystem,
  from: From,
): WorkingSheet | null {
  const found = solvedFigure(bench, asked, estimator);
  const item = itemById(bench.aircraft, asked.itemId);
  const balance = benchBalance(bench, needsEstimate(asked.wanted.quantity) ? estimator : undefined);
  const place = wantedPlace(balance, asked.wanted);
  if (found === null || !item || !place || !('massG' in item) || item.twinId || !balance.cgMm) return null;
  const start = place.axis === 0 ? from : NO_POINT;
  const itself = balance.bodies.find(({ sourceId }) => sourceId === item.id)?.mass;
  const atMm = itself?.cgMm?.[place.axis] ?? item.positionMm[place.axis];
  const restG = balance.massG - item.massG;
  const restMm = (balance.massG * balance.cgMm[place.axis] - item.massG * atMm) / restG;
  const sheet = {
    name: shownText(item.name),
    restG,
    restMm: restMm - start.mm,
    wantedMm: place.mm - start.mm,
  };
  return asked.solve === 'mass'
    ? massSheet({ ...sheet, atMm: atMm - start.mm }, units, start)
    : placeSheet({ ...sheet, massG: item.massG }, units, start);
}

interface Rest {
  readonly name: string;
  readonly restG: number;
  readonly restMm: number;
  readonly wantedMm: number;
}

/** What either sum begins from: everything else, the CG that is wanted, and what of the part is fixed. */
const given = (
  name: string,
  start: From,
  [w, x, wanted]: readonly [string, string, string],
  fixed: readonly [string, string],
) => ({
  says: `“${name}” balances everything else about the wanted CG. Arms from ${start.name}.`,
  rows: [['Mass of everything else', w], ['Its CG', x], ['Wanted CG', wanted], fixed],
  total: null,
});

function massSheet(
  { name, restG, restMm, wantedMm, atMm }: Rest & { readonly atMm: number },
  units: UnitSystem,
  start: From,
): WorkingSheet {
  const [mass, arm] = [ownUnit('mass', units), ownUnit('length', units)];
  const { figures, places, result } = calculatorFigures(
    [restG / mass.size, restMm / arm.size, wantedMm / arm.size, atMm / arm.size],
    ([w = 0, x = 0, wanted = 0, at = 0]) => (w * (x - wanted)) / (wanted - at),
    { figures: shownPlaces('length', units, true), result: shownPlaces('mass', units) },
  );
  const [w = '', x = '', wanted = '', at = ''] = figures.map((figure) => formatNumber(figure, places));
  const head = ['', `${mass.symbol} and ${arm.symbol}`];
  return {
    ...given(name, start, [w, x, wanted], [`Where “${name}” is`, at]),
    head,
    steps: [
      'Mass = everything else × (its CG − wanted) ÷ (wanted − where it is)',
      `${w} × (${x} − ${wanted}) ÷ (${wanted} − ${at}) = ${formatNumber(result, shownPlaces('mass', units))} ${mass.symbol}`,
    ],
  };
}

function placeSheet(
  { name, restG, restMm, wantedMm, massG }: Rest & { readonly massG: number },
  units: UnitSystem,
  start: From,
): WorkingSheet {
  const [mass, arm] = [ownUnit('mass', units), ownUnit('length', units)];
  const shown = shownPlaces('length', units, true);
  const { figures, places, result } = calculatorFigures(
    [restG / mass.size, restMm / arm.size, wantedMm / arm.size, massG / mass.size],
    ([w = 0, x = 0, wanted = 0, m = 1]) => wanted - (w * (x - wanted)) / m,
    { figures: shown, result: shown },
  );
  const [w = '', x = '', wanted = '', m = ''] = figures.map((figure) => formatNumber(figure, places));
  const head = ['', `${mass.symbol} and ${arm.symbol}`];
  return {
    ...given(name, start, [w, x, wanted], [`Mass of “${name}”`, m]),
    head,
    steps: [
      'Place = wanted − everything else × (its CG − wanted) ÷ its mass',
      `${wanted} − ${w} × (${x} − ${wanted}) ÷ ${m} = ${formatNumber(result, shown)} ${arm.symbol}`,
    ],
  };
}
