import type { Vec3 } from '../geometry/types';
import { add, distance, lerp } from '../geometry/vec3';
import type { Lead, MovablePart, PlaceProblem } from './types';

/** Where a lead's end is: on a part that may move, or somewhere for good. */
export type LeadEnd =
  | { readonly part: number; readonly atMm: null }
  | { readonly part: null; readonly atMm: Vec3 };

/** Both ends of a lead. An obstacle holds its end in the middle of its box. */
export function leadEnds(problem: PlaceProblem, { name, from, to }: Lead): readonly [LeadEnd, LeadEnd] {
  const endOf = (end: string | Vec3): LeadEnd => {
    if (typeof end !== 'string') return { part: null, atMm: end };
    const part = problem.parts.findIndex(({ id }) => id === end);
    if (part >= 0) return { part, atMm: null };
    const box = problem.obstacles.find(({ id }) => id === end);
    if (!box)
      throw new RangeError(`Lead “${name}”: expected a part, an obstacle or a point, got ${String(end)}.`);
    return { part: null, atMm: lerp(box.minMm, box.maxMm, 0.5) };
  };
  return [endOf(from), endOf(to)];
}

/** From the middle of a part's box to where a lead leaves it in an option, mm. */
export const endOffset = (part: MovablePart, option: number, leadId: string): Vec3 =>
  part.options[option]?.leadEndsMm?.[leadId] ?? [0, 0, 0];

/** Both ends in the aircraft's frame, mm, with every part in an option at a place. */
export function endsAt(
  problem: PlaceProblem,
  lead: Lead,
  placeOf: (part: number) => { readonly option: number; readonly centreMm: Vec3 },
): readonly [Vec3, Vec3] {
  const [a, b] = leadEnds(problem, lead).map(({ part, atMm }): Vec3 => {
    if (part === null) return atMm;
    const { option, centreMm } = placeOf(part);
    return add(centreMm, endOffset(problem.parts[part]!, option, lead.id));
  });
  return [a!, b!];
}

/** What a lead needs from end to end, mm: along the axes, or straight by way of its waypoints. */
export function leadRunMm({ by = 'axes', waypointsMm = [] }: Lead, from: Vec3, to: Vec3): number {
  if (by === 'axes') {
    return Math.abs(from[0] - to[0]) + Math.abs(from[1] - to[1]) + Math.abs(from[2] - to[2]);
  }
  return stretches(waypointsMm, from, to).reduce((sum, [a, b]) => sum + distance(a, b), 0);
}

/** A lead's mass, g, and its first moment, g·mm, spread evenly over its straight stretches. */
export function leadMoment(lead: Lead, from: Vec3, to: Vec3): { massG: number; momentGmm: Vec3 } {
  const { mass, waypointsMm = [] } = lead;
  const runs = stretches(waypointsMm, from, to).map(([a, b]) => ({
    lengthMm: distance(a, b),
    middleMm: lerp(a, b, 0.5),
  }));
  const runMm = runs.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  const massG = mass ? mass.massG + mass.gPerMm * runMm : 0;
  const share = (lengthMm: number) => (runMm > 0 ? (massG * lengthMm) / runMm : massG / runs.length);
  const momentGmm: [number, number, number] = [0, 0, 0];
  for (const { lengthMm, middleMm } of runs) {
    for (const axis of [0, 1, 2] as const) momentGmm[axis] += share(lengthMm) * middleMm[axis];
  }
  return { massG, momentGmm };
}

function stretches(waypointsMm: readonly Vec3[], from: Vec3, to: Vec3): (readonly [Vec3, Vec3])[] {
  const points = [from, ...waypointsMm, to];
  return points.slice(1).map((point, i) => [points[i]!, point] as const);
}
