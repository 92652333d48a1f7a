import type { Vec3 } from '../geometry/types';
import { axisWays, canBeApart, straightWays, type Way, wayAt } from './apartWays';
import { addColumn, addRow, type Milp, type Terms } from './milp';
import { type Axis, type Gap, mayMeet, type Occupant } from './regions';
import type { PlaceOption } from './types';

/** A part in a program, or a fixed item. */
export interface Body {
  readonly id: string;
  readonly options: readonly {
    readonly index: number;
    readonly option: PlaceOption;
    readonly column: number;
  }[];
  /** Columns of the middle of the box. */
  readonly centre: readonly [number, number, number];
  readonly fixed: Occupant | null;
  /** A stack of ballast: its column of steps, what each adds at either end, mm, and the column that is 1 with any. */
  readonly grows?: { readonly steps: number; readonly perStepMm: number; readonly any: number };
  readonly atMm: Vec3 | null;
}

const occupants = (body: Body): readonly { readonly what: Occupant; readonly column: number | null }[] =>
  body.fixed
    ? [{ what: body.fixed, column: body.grows?.any ?? null }]
    : body.options.map(({ option, column }) => ({ what: option, column }));

/** The front (−1) or rear (+1) face of a body along an axis, as terms and a constant. */
function face(body: Body, axis: Axis, side: 1 | -1): { terms: Terms; atMm: number } {
  if (body.grows && axis === 0)
    return { terms: [[body.grows.steps, side * body.grows.perStepMm]], atMm: body.atMm![0] };
  if (body.fixed)
    return { terms: [], atMm: side > 0 ? body.fixed.region.maxMm[axis] : body.fixed.region.minMm[axis] };
  return {
    terms: [
      [body.centre[axis], 1],
      ...body.options.map(({ column, option }) => [column, (side * option.sizeMm[axis]) / 2] as const),
    ],
    atMm: 0,
  };
}

const least = (body: Body, axis: Axis) =>
  Math.min(...occupants(body).map(({ what }) => what.region.minMm[axis]));
const most = (body: Body, axis: Axis) =>
  Math.max(...occupants(body).map(({ what }) => what.region.maxMm[axis]));

/**
 * Keeps two bodies apart wherever their chosen options may meet. With places to be like, they keep the direction in which
 * they are farthest apart there.
 */
export function addApart(
  program: Milp,
  a: Body,
  b: Body,
  { axisMm, straightMm }: Gap,
  likeMm: readonly [Vec3, Vec3] | undefined,
): void {
  // What keeps the straight distance keeps a √3rd of it along an axis.
  if (straightMm <= 0 || straightMm < axisMm * Math.sqrt(3)) keepOne(program, a, b, axisMm, 'axis', likeMm);
  if (straightMm > 0) keepOne(program, a, b, straightMm, 'straight', likeMm);
}

function keepOne(
  program: Milp,
  a: Body,
  b: Body,
  gapMm: number,
  by: 'axis' | 'straight',
  likeMm: readonly [Vec3, Vec3] | undefined,
): void {
  const meeting = occupants(a).flatMap((mine) =>
    occupants(b).flatMap((other) => (mayMeet(mine.what, other.what, gapMm) ? [{ mine, other }] : [])),
  );
  if (meeting.length === 0) return;
  if (likeMm) {
    const { mine, other } = meeting[0]!;
    hold(program, a, b, wayAt(likeMm, [mine.what.sizeMm, other.what.sizeMm], gapMm, by), null);
    return;
  }
  const ways = by === 'axis' ? axisWays(gapMm) : straightWays(gapMm);
  const possible = ways.filter((way) =>
    meeting.some(({ mine, other }) => canBeApart(mine.what, other.what, way)),
  );
  const columns = possible.map((way) => {
    const column = addColumn(program, 0, 1, true);
    hold(program, a, b, way, column);
    return column;
  });
  for (const { mine, other } of meeting) {
    const terms: Terms = [
      ...columns.map((column) => [column, 1] as const),
      ...[mine.column, other.column].flatMap((column) => (column === null ? [] : [[column, -1] as const])),
    ];
    const choosing = Number(mine.column !== null) + Number(other.column !== null);
    addRow(program, terms, 1 - choosing);
  }
}

/** Σ weight·(rear one's front face − front one's rear face) ≥ least; switched off unless the column is 1. */
function hold(program: Milp, a: Body, b: Body, { along, leastMm }: Way, column: number | null): void {
  const terms: (readonly [number, number])[] = [];
  let needed = leastMm;
  let worst = 0;
  for (const { axis, front, weight } of along) {
    const [first, last] = front === 'a' ? [a, b] : [b, a];
    const end = face(first, axis, 1);
    const start = face(last, axis, -1);
    for (const [c, factor] of start.terms) terms.push([c, weight * factor]);
    for (const [c, factor] of end.terms) terms.push([c, -weight * factor]);
    needed += weight * (end.atMm - start.atMm);
    worst += weight * (least(last, axis) - most(first, axis));
  }
  if (column === null) {
    addRow(program, terms, needed);
    return;
  }
  const off = leastMm - worst;
  addRow(program, [...terms, [column, -off]], needed - off);
}
