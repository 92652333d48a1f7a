import { formatNumber, ownUnit, shownPlaces, type UnitSystem } from '../../units';
import { calculatorFigures } from '../../words/calculatorSum';
import { kindOf } from '../figureText';
import type { ShownQuantity } from '../types';

/** How a figure of a kind stands on paper: what one unit is, its symbol, and its decimals. */
interface Written {
  readonly size: number;
  readonly symbol: string;
  readonly places: number;
}

function writtenAs(quantity: ShownQuantity, units: UnitSystem): Written {
  const of = (measure: 'length' | 'mass' | 'volume', fine: boolean): Written => ({
    ...ownUnit(measure, units),
    places: shownPlaces(measure, units, fine),
  });
  switch (kindOf(quantity)) {
    case 'station':
    case 'buttline':
    case 'plusMinus':
      return of('length', true);
    case 'mass':
      return of('mass', false);
    case 'volume':
      return of('volume', false);
    case 'margin':
      return { size: 1, symbol: '% MAC', places: 1 };
    case 'inertia':
      return { size: 1, symbol: 'kg·m²', places: 4 };
  }
}

/** The last line of two sums: how far the figure moved, or how many times as much it is. Stations from a point, mm. */
export function heldTogether(
  quantity: ShownQuantity,
  as: 'shift' | 'times',
  [first, last]: readonly [number, number],
  units: UnitSystem,
  fromMm: number,
): string {
  const { size, symbol, places } = writtenAs(quantity, units);
  const away = kindOf(quantity) === 'station' ? fromMm : 0;
  const times = as === 'times';
  const {
    figures,
    places: taken,
    result,
  } = calculatorFigures(
    [(last - away) / size, (first - away) / size],
    ([after = 0, before = 1]) => (times ? after / before : after - before),
    { figures: places, result: times ? 2 : places },
  );
  const [after = '', before = ''] = figures.map((figure) => formatNumber(figure, taken));
  return times
    ? `${after} ÷ ${before} = ${formatNumber(result, 2)} times`
    : `${after} − ${before} = ${formatNumber(result, places, true)} ${symbol}`;
}
