import type { Vec3 } from '../geometry/types';
import { addColumn, addRow, type Milp, type Terms } from './milp';
import { AXES, type Axis, canPrecede, mayMeet, type Occupant } from './regions';
import type { PlaceOption } from './types';

/** A part in a program, or a fixed thing. */
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
  readonly atMm: Vec3 | null;
}

const occupants = (body: Body): readonly { readonly what: Occupant; readonly column: number | null }[] =>
  body.fixed
    ? [{ what: body.fixed, column: null }]
    : body.options.map(({ option, column }) => ({ what: option, column }));

/** The front (−1) or rear (+1) face of a body along an axis, as terms and a constant. */
function face(body: Body, axis: Axis, side: 1 | -1): { terms: Terms; atMm: number } {
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

interface Way {
  readonly axis: Axis;
  readonly front: Body;
  readonly rear: Body;
  readonly canFor: (a: Occupant, b: Occupant) => boolean;
}

/**
 * Keeps two bodies a gap apart wherever their chosen options may meet. With places to be like, they keep the direction in
 * which they are farthest apart there.
 */
export function addApart(
  program: Milp,
  a: Body,
  b: Body,
  gapMm: number,
  likeMm: readonly [Vec3, Vec3] | undefined,
): void {
  const meeting = occupants(a).flatMap((one) =>
    occupants(b).flatMap((other) => (mayMeet(one.what, other.what, gapMm) ? [{ one, other }] : [])),
  );
  if (meeting.length === 0) return;
  const ways: Way[] = AXES.flatMap((axis) => [
    { axis, front: a, rear: b, canFor: (x: Occupant, y: Occupant) => canPrecede(x, y, gapMm, axis) },
    { axis, front: b, rear: a, canFor: (x: Occupant, y: Occupant) => canPrecede(y, x, gapMm, axis) },
  ]);
  if (likeMm) {
    const { one, other } = meeting[0]!;
    const room = ({ axis, front }: Way) =>
      (likeMm[1][axis] - likeMm[0][axis]) * (front === a ? 1 : -1) -
      (one.what.sizeMm[axis] + other.what.sizeMm[axis]) / 2;
    hold(
      program,
      ways.reduce((x, y) => (room(y) > room(x) ? y : x)),
      gapMm,
      null,
    );
    return;
  }
  const possible = ways.filter(({ canFor }) =>
    meeting.some(({ one, other }) => canFor(one.what, other.what)),
  );
  const columns = possible.map((way) => {
    const column = addColumn(program, 0, 1, true);
    hold(program, way, gapMm, column);
    return column;
  });
  for (const { one, other } of meeting) {
    const terms: Terms = [
      ...columns.map((column) => [column, 1] as const),
      ...[one.column, other.column].flatMap((column) => (column === null ? [] : [[column, -1] as const])),
    ];
    const choosing = Number(one.column !== null) + Number(other.column !== null);
    addRow(program, terms, 1 - choosing);
  }
}

/** The front one's rear face and the gap before the rear one's front face; switched off unless the column is 1. */
function hold(program: Milp, { axis, front, rear }: Way, gapMm: number, column: number | null): void {
  const end = face(front, axis, 1);
  const start = face(rear, axis, -1);
  const terms: (readonly [number, number])[] = [
    ...start.terms,
    ...end.terms.map(([column, factor]) => [column, -factor] as const),
  ];
  const needed = gapMm + end.atMm - start.atMm;
  if (column === null) {
    addRow(program, terms, needed);
    return;
  }
  const off = most(front, axis) + gapMm - least(rear, axis);
  addRow(program, [...terms, [column, -off]], needed - off);
}
