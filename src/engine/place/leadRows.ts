import type { Vec3 } from '../geometry/types';
import type { Body } from './apartRows';
import { addRow, type Milp, type Terms } from './milp';
import { AXES } from './regions';
import type { Lead, PlaceProblem } from './types';

/** The signs that an absolute value along each axis may take. */
const SIGNS = [1, -1].flatMap((x) => [1, -1].flatMap((y) => [1, -1].map((z) => [x, y, z] as const)));

/** Where an end of a lead is that does not move: a point, or the middle of an obstacle. */
export function fixedEnd(problem: PlaceProblem, end: string | Vec3): Vec3 | null {
  if (typeof end !== 'string') return end;
  const box = problem.obstacles.find(({ id }) => id === end);
  return box
    ? [
        (box.minMm[0] + box.maxMm[0]) / 2,
        (box.minMm[1] + box.maxMm[1]) / 2,
        (box.minMm[2] + box.maxMm[2]) / 2,
      ]
    : null;
}

/** Leads run along the axes: |Δx| + |Δy| + |Δz| ≤ length is eight linear conditions. */
export function addLeads(program: Milp, problem: PlaceProblem, bodies: readonly Body[]): void {
  for (const lead of problem.leads) {
    const ends = [endOf(problem, bodies, lead, lead.from), endOf(problem, bodies, lead, lead.to)] as const;
    for (const signs of SIGNS) {
      const terms: (readonly [number, number])[] = [];
      let constant = 0;
      ends.forEach(({ centre, atMm }, e) => {
        for (const axis of AXES) {
          const sign = signs[axis] * (e === 0 ? 1 : -1);
          if (centre) terms.push([centre[axis], -sign]);
          else constant += sign * atMm![axis];
        }
      });
      addRow(program, terms satisfies Terms, constant - lead.lengthMm);
    }
  }
}

function endOf(problem: PlaceProblem, bodies: readonly Body[], lead: Lead, end: string | Vec3) {
  const body = typeof end === 'string' ? bodies.find(({ id }) => id === end) : undefined;
  if (body) return { centre: body.centre, atMm: null };
  const atMm = fixedEnd(problem, end);
  if (!atMm)
    throw new RangeError(`Lead “${lead.name}”: expected a part, an obstacle or a point, got ${String(end)}.`);
  return { centre: null, atMm };
}
