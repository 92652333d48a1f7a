import type { Vec3 } from '../geometry/types';
import { length, normalise, scale, sub } from '../geometry/vec3';
import type { Body } from './apartRows';
import { endOffset, leadEnds } from './leadRun';
import { addColumn, addRow, type Milp, type Terms } from './milp';
import { AXES } from './regions';
import type { Lead, PlaceProblem } from './types';

/** The signs that an absolute value along each axis may take. */
const SIGNS = [1, -1].flatMap((x) => [1, -1].flatMap((y) => [1, -1].map((z) => [x, y, z] as const)));

/** All ways to the faces, edges and corners of a cube, as unit vectors. */
const WAYS: readonly Vec3[] = [-1, 0, 1].flatMap((x) =>
  [-1, 0, 1].flatMap((y) =>
    [-1, 0, 1].flatMap((z) => {
      const way = normalise([x, y, z]);
      return way ? [way] : [];
    }),
  ),
);

/**
 * Directions in which straight stretches of leads have been seen to run, by lead: a stretch is at least as long as it
 * reaches in any direction, so each is true of every place and makes the straight distance a little better known.
 */
export type LeadTangents = Map<string, Vec3[]>;

/** A point that is a sum of columns and a constant along each axis. */
interface Point {
  readonly terms: readonly [Terms, Terms, Terms];
  readonly atMm: Vec3;
}

const fixedPoint = (atMm: Vec3): Point => ({ terms: [[], [], []], atMm });

/** Leads that reach. */
export function addLeads(
  program: Milp,
  problem: PlaceProblem,
  bodies: readonly Body[],
  tangents: LeadTangents,
): void {
  for (const lead of problem.leads) {
    if (!Number.isFinite(lead.lengthMm)) continue;
    const [from, to] = leadEnds(problem, lead).map((end): Point => {
      if (end.part === null) return fixedPoint(end.atMm);
      return endOf(problem, lead, end.part, bodies[end.part]!);
    }) as [Point, Point];
    if (lead.by !== 'straight') addAlongAxes(program, lead, from, to);
    else addStraight(program, lead, from, to, tangents.get(lead.id) ?? []);
  }
}

function endOf(problem: PlaceProblem, lead: Lead, part: number, { centre, options }: Body): Point {
  const along = (axis: 0 | 1 | 2): Terms => [
    [centre[axis], 1],
    ...options.flatMap(({ column, index }) => {
      const off = endOffset(problem.parts[part]!, index, lead.id)[axis];
      return off === 0 ? [] : [[column, off] as const];
    }),
  ];
  return { terms: [along(0), along(1), along(2)], atMm: [0, 0, 0] };
}

/** factor·(a − b) in a direction, as terms and a constant. */
function reach(
  a: Point,
  b: Point,
  way: Vec3,
  factor: number,
): { terms: [number, number][]; constant: number } {
  const terms: [number, number][] = [];
  let constant = 0;
  for (const axis of AXES) {
    for (const [column, by] of a.terms[axis]) terms.push([column, factor * way[axis] * by]);
    for (const [column, by] of b.terms[axis]) terms.push([column, -factor * way[axis] * by]);
    constant += factor * way[axis] * (a.atMm[axis] - b.atMm[axis]);
  }
  return { terms, constant };
}

/** |Δx| + |Δy| + |Δz| ≤ length is eight linear conditions. */
function addAlongAxes(program: Milp, { lengthMm }: Lead, from: Point, to: Point): void {
  for (const signs of SIGNS) {
    const { terms, constant } = reach(from, to, signs, -1);
    addRow(program, terms, -lengthMm - constant);
  }
}

/** A column for each stretch with an end that may move, at least as long as it reaches in every direction looked at. */
function addStraight(program: Milp, lead: Lead, from: Point, to: Point, seen: readonly Vec3[]): void {
  const waypoints = lead.waypointsMm ?? [];
  const points = [from, ...waypoints.map(fixedPoint), to];
  const movable = ({ terms }: Point) => terms.some((sum) => sum.length > 0);
  let left = lead.lengthMm;
  const stretches: number[] = [];
  points.slice(1).forEach((to, i) => {
    const from = points[i]!;
    if (!movable(from) && !movable(to)) {
      left -= length(sub(from.atMm, to.atMm));
      return;
    }
    const stretch = addColumn(program, 0, Number.POSITIVE_INFINITY);
    for (const way of [...WAYS, ...seen]) {
      const { terms, constant } = reach(from, to, way, -1);
      addRow(program, [[stretch, 1], ...terms], -constant);
    }
    stretches.push(stretch);
  });
  addRow(
    program,
    stretches.map((column) => [column, -1] as const),
    -left,
  );
}

/** Keeps the directions in which a lead that is too short runs with its ends here; false where they were known. */
export function learnTangents(tangents: LeadTangents, lead: Lead, from: Vec3, to: Vec3): boolean {
  const points = [from, ...(lead.waypointsMm ?? []), to];
  const already = tangents.get(lead.id) ?? [];
  const fresh = [points[1]!, points.at(-1)!].flatMap((end, i) => {
    const way = normalise(sub(i === 0 ? from : points.at(-2)!, end));
    return way && !already.some((each) => length(sub(each, way)) < 1e-9) ? [way, scale(way, -1)] : [];
  });
  if (fresh.length === 0) return false;
  tangents.set(lead.id, [...already, ...fresh]);
  return true;
}
