import { type Parsed, parseQuantity, type Quantity, type UnitSystem } from '../units';

/** Which mark parts the decimals in a table. */
export type DecimalMark = 'point' | 'comma';

/**
 * Which mark it is by the figures of a table: a comma or a point that cannot group thousands. Null where nothing says, or
 * both are used; then each figure is read by itself, and one that can be read two ways is refused.
 */
export function guessDecimal(cells: readonly string[]): DecimalMark | null {
  const has = (pattern: RegExp) => cells.some((cell) => /\d/.test(cell) && pattern.test(cell));
  // After the mark stand other than three digits, or before it more than three or a lone zero, or a group went before.
  const comma = has(/,\d{1,2}(?!\d)|,\d{4,}|(?<![\d.,])0,\d|\d{4,},\d|\.\d{3},\d/);
  const point = has(/\.\d{1,2}(?!\d)|\.\d{4,}|(?<![\d.,])0\.\d|\d{4,}\.\d|,\d{3}\.\d/);
  return comma === point ? null : comma ? 'comma' : 'point';
}

/** The same figure with a decimal point and no marks between its thousands. */
function plainFigure(cell: string, decimal: DecimalMark | null): string {
  if (decimal === null) return cell;
  const [group, mark] = decimal === 'comma' ? ['\\.', ','] : [',', '\\.'];
  const grouped = new RegExp(`(?<![\\d.,])\\d{1,3}(?:${group}\\d{3})+(?:${mark}\\d+)?(?![\\d.,])`, 'g');
  const ungrouped = cell.replace(grouped, (figure) => figure.replaceAll(decimal === 'comma' ? '.' : ',', ''));
  return decimal === 'comma' ? ungrouped.replace(/(?<=\d),(?=\d)/g, '.') : ungrouped;
}

/** How the figures of a column are read. */
export interface FigureReading {
  readonly quantity: Quantity;
  /** What a bare figure is in; the person's own unit where it is null. */
  readonly unit: string | null;
  readonly decimal: DecimalMark | null;
  readonly system: UnitSystem;
}

/** A figure from a cell, in the file's unit; what the cell itself says of its unit goes first. */
export function readFigure(cell: string, { quantity, unit, decimal, system }: FigureReading): Parsed {
  if (decimal === null && /(?<![\d.,])[1-9]\d{0,2}\.\d{3}(?!\d)/.test(cell)) {
    return { ok: false, sentence: `${cell} can be read two ways: say which mark parts the decimals.` };
  }
  const figure = plainFigure(cell, decimal);
  const saysUnit = /[a-z"'°%″′]/i.test(figure);
  const bare = parseQuantity(figure, { quantity, system });
  // What cannot be read by itself is told of as it was written, without the unit of its column.
  if (saysUnit || unit === null || unit === '' || !bare.ok) return bare;
  return parseQuantity(`(${figure}) ${unit}`, { quantity, system });
}
