import { COVERAGE_FACTOR } from '../../../engine/balance/uncertainty';
import type { Balance } from '../../balance/balance';
import { carriedOver, cgErrorOf, LINE_95 } from '../../balance/certainty';
import { shownText } from '../../document/names';
import type { Aircraft } from '../../document/types';
import { formatNumber, ownUnit, type UnitSystem } from '../../units';
import type { WorkingSheet } from '../../words/workingSheet';

/** Decimals of the effects, and those of the figure that is shown. */
const PLACES: Readonly<Record<UnitSystem, { readonly effect: number; readonly shown: number }>> = {
  metric: { effect: 2, shown: 1 },
  'inch-ounce': { effect: 4, shown: 2 },
};
const MOST_EXTRA = 4;

/**
 * The ± of the CG's station, by the root of the sum of squares (GUM 5.1.2): each mass moves it by ±g × its distance from the CG ÷
 * the whole mass, each place by ±mm × its share of the mass. What the density of the fuel does is a line of its own. Null without
 * a CG.
 */
export function plusMinusSheet(aircraft: Aircraft, balance: Balance, units: UnitSystem): WorkingSheet | null {
  const carried = carriedOver(aircraft, balance);
  const error = cgErrorOf(aircraft, balance);
  const { cgMm, massG } = balance;
  if (!carried || !error || !cgMm) return null;
  const { symbol, size } = ownUnit('length', units);
  const liquidIn = new Map(balance.liquids.map(({ tankId, mass }) => [tankId, mass.massG]));
  const lines = carried.things.flatMap(({ id, name, mass, sigmaG, sigmaMm }) => {
    if (!mass.cgMm) return [];
    const byMass = (COVERAGE_FACTOR * sigmaG * (mass.cgMm[0] - cgMm[0])) / massG;
    const byPlace = (COVERAGE_FACTOR * sigmaMm[0] * (mass.massG + (liquidIn.get(id) ?? 0))) / massG;
    return [{ name: shownText(name), effects: [byMass, byPlace].map((mm) => Math.abs(mm) / size) }];
  });
  const wholeMm = LINE_95 * error.sigmaMm[0];
  const listedMm2 = lines.reduce((sum, { effects }) => sum + squares(effects), 0) * size ** 2;
  const restMm = Math.sqrt(Math.max(0, wholeMm ** 2 - listedMm2));
  const all = restMm > 1e-6 ? [...lines, { name: 'Density of the fuel', effects: [restMm / size] }] : lines;
  return written(all, wholeMm / size, symbol, PLACES[units]);
}

const squares = (effects: readonly number[]) => effects.reduce((sum, each) => sum + each ** 2, 0);

interface Line {
  readonly name: string;
  /** By its mass, and by its place. */
  readonly effects: readonly number[];
}

function written(
  lines: readonly Line[],
  whole: number,
  symbol: string,
  { effect, shown }: { readonly effect: number; readonly shown: number },
): WorkingSheet {
  let places = effect;
  const at = (figure: number) => Number(figure.toFixed(places));
  const squaredOf = ({ effects }: Line) => at(squares(effects.map(at)));
  const total = () => lines.reduce((sum, line) => sum + squaredOf(line), 0);
  const readsRight = () => Math.sqrt(at(total())).toFixed(shown) === whole.toFixed(shown);
  while (places < effect + MOST_EXTRA && !readsRight()) places += 1;
  const text = (figure: number) => formatNumber(figure, places);
  return {
    says: 'What each ± may move the CG by. Squares are added, and the root is taken: chance errors seldom all fall one way.',
    head: ['', `By its mass, ${symbol}`, `By its place, ${symbol}`, `Squares, ${symbol}²`],
    rows: lines.map((line) => [
      line.name,
      text(line.effects[0] ?? 0),
      line.effects[1] === undefined ? '' : text(line.effects[1]),
      text(squaredOf(line)),
    ]),
    total: ['Total', '', '', text(total())],
    steps: [
      '± of the CG = √ of the squares added',
      `√${text(total())} = ±${formatNumber(whole, shown)} ${symbol}`,
    ],
  };
}
