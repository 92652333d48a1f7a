import * as v from 'valibot';
import { isName, NAME_WANTED, shownText } from '../document/names';
import { part as partSchema, roles } from '../document/schema/aircraft';
import type { MassFrom, Part, Role } from '../document/types';
import type { UnitSystem } from '../units';
import { type Column, type Field, quantityOf } from './columns';
import { type DecimalMark, readFigure } from './figures';

/** What is wrong with a cell, or doubtful: which column, and why. */
export interface CellRemark {
  /** The head of the column, or what it says where it has none. */
  readonly column: string;
  readonly sentence: string;
}

/** A part as a row says it; its place is null along the axes that it says nothing of. */
export interface RowPart {
  readonly part: Omit<Part, 'id' | 'positionMm'>;
  readonly placeMm: readonly [number | null, number | null, number | null];
  readonly count: number;
}

/** A row as it was read: a part, or what is wrong with it; and what was taken for granted. */
export interface RowRead {
  /** As a spreadsheet counts it. */
  readonly row: number;
  /** The cell that names it, or its first one. */
  readonly name: string;
  readonly read: RowPart | null;
  readonly faults: readonly CellRemark[];
  readonly notes: readonly CellRemark[];
  /** It looks like a sum of the rows before it. */
  readonly isTotal: boolean;
}

export interface RowReading {
  readonly columns: readonly Column[];
  readonly decimal: DecimalMark | null;
  readonly system: UnitSystem;
  /** Where the masses come from; null where nobody says. */
  readonly massFrom: MassFrom | null;
}

/** No row stands for more of one thing. */
const MOST_OF_ONE = 50;
/** What has no sizes is taken as a cube of this density, g/ml; common practice, what most of a model's parts come to. */
const CUBE_G_PER_ML = 1.5;
const LEAST_EDGE_MM = 10;

const TOTAL = /^(sub)?-?\s*(totals?|sum|all up|gross)\b/i;
/** How people leave a figure open. */
const OPEN = /^([-–—?]|n\/?a|tbd|unknown)$/i;

/** What names of parts say of their roles; the first that fits wins. */
const roleHints: readonly (readonly [Role, RegExp])[] = [
  ['control', /\bservos?\b/],
  ['radio', /\b(receiver|rx|gyro|gps|antenna|telemetry|logger|tracker)\b/],
  ['energy', /\b(batter(y|ies)|packs?|lipo|cells?|accu)\b/],
  ['powerplant', /\b(motor|engine|esc|controller|prop(eller)?|spinner|turbine|ignition|muffler)\b/],
  ['undercarriage', /\b(wheels?|legs?|gear|retracts?)\b/],
  ['payload', /\b(camera|gimbal|payload)\b/],
  ['ballast', /\b(ballast|lead)\b/],
];

/** Reads a row. Every cell that cannot be read has its sentence; nothing is filled in without a note. */
export function readRow(cells: readonly string[], row: number, how: RowReading): RowRead {
  const faults: CellRemark[] = [];
  const notes: CellRemark[] = [];
  const { columns } = how;
  const at = (field: Field) => columns.findIndex((column) => column.field === field);
  const cellOf = (field: Field): string => cells[at(field)] ?? '';
  const headOf = (field: Field) => columns[at(field)]?.head || field;
  const fault = (field: Field, sentence: string) => faults.push({ column: headOf(field), sentence });
  const note = (field: Field, sentence: string) => notes.push({ column: headOf(field), sentence });
  const figure = (field: Field, cell = cellOf(field)): number | null => {
    const column = columns[at(field)];
    const quantity = quantityOf[field];
    if (!column || quantity === null || cell === '' || OPEN.test(cell)) return null;
    const read = readFigure(cell, { quantity, unit: column.unit, decimal: how.decimal, system: how.system });
    if (read.ok) return read.value;
    fault(field, `got “${shownText(cell)}”. ${read.sentence}`);
    return null;
  };

  const name = cellOf('name');
  if (!isName(name))
    fault('name', name === '' ? 'expected a name, got nothing.' : `expected ${NAME_WANTED}.`);
  const massG = figure('mass');
  if (massG === null && faults.every(({ column }) => column !== headOf('mass'))) {
    note('mass', 'no mass: it counts as 0 g and unknown until it is weighed or found.');
  }
  const plusMinusG = figure('plusMinus');
  const { shape, assumed } = shapeOf(massG ?? 0, figure, cellOf('size'), (sentence) =>
    fault('size', sentence),
  );
  if (assumed) note('size', assumed);
  const count = countOf(figure('count'), (sentence) => fault('count', sentence));
  const role = roleOf(cellOf('role'), name, (sentence) => note('role', sentence));
  const placeMm = [figure('station'), figure('buttline'), figure('waterline')] as const;
  if (placeMm[0] === null && (placeMm[1] !== null || placeMm[2] !== null)) {
    note(
      'station',
      'no station: it goes to the first free place, and its buttline and waterline are not used.',
    );
  }
  const notesText = cellOf('notes');
  const part: RowPart['part'] = {
    name,
    role,
    shape,
    massG: massG ?? 0,
    ...(plusMinusG !== null && { plusMinusG }),
    yawDeg: 0,
    pitchDeg: 0,
    rollDeg: 0,
    ...massSource(massG, how.massFrom),
    ...(assumed !== null && { sizeFrom: 'assumed' as const }),
    ...(notesText !== '' && { notes: notesText }),
  };
  if (faults.length === 0) faults.push(...schemaRemarks(part, placeMm));
  return {
    row,
    name: name || (cells.find((cell) => cell !== '') ?? ''),
    read: faults.length === 0 ? { part, placeMm, count } : null,
    faults,
    notes,
    isTotal: TOTAL.test(name),
  };
}

const massSource = (massG: number | null, massFrom: MassFrom | null): Pick<Part, 'massFrom'> => {
  if (massG === null) return { massFrom: 'unknown' };
  return massFrom === null ? {} : { massFrom };
};

/** What the file's own rules have against the part, by field. */
function schemaRemarks(part: RowPart['part'], placeMm: RowPart['placeMm']): CellRemark[] {
  const whole = { ...part, id: 'x', positionMm: placeMm.map((mm) => mm ?? 0) };
  const result = v.safeParse(partSchema, whole);
  if (result.success) return [];
  return result.issues.map(({ path, message, input }) => ({
    column: (path ?? []).map(({ key }) => String(key)).join(' › ') || 'row',
    sentence: `${message}, got ${shownText(String(input))}.`,
  }));
}

type ReadOne = (field: Field, cell?: string) => number | null;

/** The shape that the sizes make: a box, a cylinder with a diameter; what is missing is assumed, and said. */
function shapeOf(
  massG: number,
  figure: ReadOne,
  size: string,
  fault: (sentence: string) => void,
): { readonly shape: Part['shape']; readonly assumed: string | null } {
  const edgeMm = Math.max(LEAST_EDGE_MM, Math.round(10 * Math.cbrt(massG / CUBE_G_PER_ML)));
  const diameterMm = figure('diameter');
  let sizes: readonly (number | null)[] = [figure('length'), figure('width'), figure('height')];
  if (size !== '' && !OPEN.test(size)) {
    const three = size.split(/\s*[x×*]\s*/i);
    if (three.length > 3)
      fault(`expected up to three lengths with × between them, got “${shownText(size)}”.`);
    else {
      // A unit at the end is that of all three.
      const unit = /[a-z"'″′]+\.?$/i.exec(size)?.[0] ?? '';
      const read = three.map((cell) =>
        figure('size', /[a-z"'″′]/i.test(cell) ? cell : `${cell} ${unit}`.trim()),
      );
      sizes = [0, 1, 2].map((place) => sizes[place] ?? read[place] ?? null);
    }
  }
  if (diameterMm !== null) {
    const lengthMm = sizes[0] ?? diameterMm;
    const missing = sizes[0] === null ? 'no length: it is taken to be as long as it is thick.' : null;
    return { shape: { kind: 'cylinder', lengthMm, diameterMm }, assumed: missing };
  }
  const [lengthMm, widthMm, heightMm] = sizes.map((mm) => mm ?? edgeMm) as [number, number, number];
  const named = ['length', 'width', 'height'].filter((_, place) => sizes[place] === null);
  const assumed =
    named.length > 0
      ? `no ${named.join(', ')}: taken to be ${edgeMm} mm, from its mass at ${CUBE_G_PER_ML} g/ml.`
      : null;
  return { shape: { kind: 'box', lengthMm, widthMm, heightMm }, assumed };
}

function countOf(count: number | null, fault: (sentence: string) => void): number {
  if (count === null) return 1;
  if (Number.isInteger(count) && count >= 1 && count <= MOST_OF_ONE) return count;
  fault(`expected a whole number, 1 to ${MOST_OF_ONE}, got ${count}.`);
  return 1;
}

function roleOf(cell: string, name: string, note: (sentence: string) => void): Role {
  const said = cell.toLowerCase();
  const role = roles.find((each) => each === said);
  if (role) return role;
  const hinted =
    roleHints.find(([, pattern]) => pattern.test(`${said} ${name.toLowerCase()}`))?.[0] ?? 'other';
  if (cell !== '') note(`“${shownText(cell)}” is no role here: taken as ${hinted}.`);
  return hinted;
}
