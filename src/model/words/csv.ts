/** A cell: text, or a figure, which is written with a decimal point and never guarded. */
export type Cell = string | number | null;

/** A spreadsheet takes a text that begins so for a formula; the full-width ones too in some languages. */
const FORMULA = /^[=+\-@\t\r＝＋－＠]/;

/** Where spreadsheets take another sign than the comma to part cells, a formula may begin in the middle of a text. */
const FORMULA_WITHIN = /((?:[;\n]|(?!^)[\t\r])["' ]*)(?=[=+\-@＝＋－＠])/g;

/** Text that no spreadsheet runs: what looks like a formula gets an apostrophe before it. */
const guarded = (text: string): string => {
  const within = text.replace(FORMULA_WITHIN, "$1'");
  return FORMULA.test(within) ? `'${within}` : within;
};

/** A millionth of a unit is less than anything that was measured. */
const figure = (value: number): string => String(Number(value.toFixed(6)) || 0);

function written(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? figure(cell) : '';
  const text = guarded(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A table as CSV (RFC 4180): a head, rows of as many cells, each line ended by CR LF. */
export const csvOf = (head: readonly string[], rows: readonly (readonly Cell[])[]): string =>
  [head, ...rows].map((row) => `${row.map(written).join(',')}\r\n`).join('');
