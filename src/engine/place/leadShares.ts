import type { Vec3 } from '../geometry/types';
import { add } from '../geometry/vec3';
import { endOffset, leadEnds, leadMoment } from './leadRun';
import type { Limit } from './limit';
import { AXES, centreRange, fitsRegion } from './regions';
import type { Lead, PlaceProblem } from './types';

/** A place for each part, by their order in the problem: what a lead's pull is worked out around. */
export type Around = readonly { readonly option: number; readonly centreMm: Vec3 }[];

/** Options that are decided, by part: what a lead's bend is bounded over. */
export type Within = readonly ({ readonly option: number } | undefined)[];

/** What a lead gives to a limit, sign·(moment − limit·mass), as a linear function of its ends along the limit's axis. */
export interface LeadShare {
  /** g for each end: what a millimetre of that end along the axis gives, g·mm. */
  readonly perEnd: readonly [number, number];
  /** g·mm with both ends at 0 along the axis. */
  readonly constant: number;
  /** The lead may give more than that by this much somewhere in the regions, g·mm; 0 where the function is exact. */
  readonly mostAbove: number;
}

/** One limit as its sign, axis and place, mm. */
export interface LimitLine {
  readonly limit: Limit;
  readonly sign: 1 | -1;
  readonly axis: 0 | 1;
  readonly atMm: number;
}

/** Samples of each region along each axis, and how much farther than any of them the truth is taken to go. */
const CUTS = [0, 0.5, 1] as const;
const BEYOND = 1.25;
/** For the slope, mm. */
const STEP_MM = 0.01;

/**
 * The pull of a lead. A straight one of stated length hangs half on each end, which is exact. One with waypoints, or made
 * to measure, is bent: its slope is taken at places given, or else in the middle of the regions with the most that it can
 * give above that, sampled over them and widened.
 */
export function leadShare(
  problem: PlaceProblem,
  lead: Lead,
  { sign, axis, atMm }: LimitLine,
  around: Around | null,
  within: Within | null = null,
): LeadShare {
  const { mass, waypointsMm = [] } = lead;
  if (!mass) return { perEnd: [0, 0], constant: 0, mostAbove: 0 };
  if (waypointsMm.length === 0 && mass.gPerMm === 0) {
    const half = (sign * mass.massG) / 2;
    return { perEnd: [half, half], constant: -sign * atMm * mass.massG, mostAbove: 0 };
  }
  const give = (from: Vec3, to: Vec3) => {
    const { massG, momentGmm } = leadMoment(lead, from, to);
    return sign * (momentGmm[axis] - atMm * massG);
  };
  const reach = reachOf(problem, lead, around, within);
  const middle = reach.map(([first]) => first!) as [Vec3, Vec3];
  const there = give(...middle);
  const slope = (which: 0 | 1) => {
    if (leadEnds(problem, lead)[which].part === null) return 0;
    const moved: [Vec3, Vec3] = [...middle];
    const shifted: [number, number, number] = [...middle[which]];
    shifted[axis] += STEP_MM;
    moved[which] = shifted;
    return (give(...moved) - there) / STEP_MM;
  };
  const perEnd = [slope(0), slope(1)] as const;
  const line = (from: Vec3, to: Vec3) => perEnd[0] * from[axis] + perEnd[1] * to[axis];
  const constant = there - line(...middle);
  if (around) return { perEnd, constant, mostAbove: 0 };
  let mostAbove = 0;
  for (const from of reach[0]!) {
    for (const to of reach[1]!) mostAbove = Math.max(mostAbove, give(from, to) - constant - line(from, to));
  }
  return { perEnd, constant, mostAbove: mostAbove * BEYOND };
}

/** Where each end of a lead can be: a middle first, then all that is looked at. */
const reachOf = (problem: PlaceProblem, lead: Lead, around: Around | null, within: Within | null) =>
  leadEnds(problem, lead).map((end) =>
    end.part === null
      ? [end.atMm]
      : pointsOf(problem, lead, end.part, around?.[end.part], within?.[end.part]?.option),
  );

/** The least that a lead weighs at the places given, or wherever its ends can be, g. */
export function leastLeadG(
  problem: PlaceProblem,
  lead: Lead,
  around: Around | null,
  within: Within | null,
): number {
  if (!lead.mass || lead.mass.gPerMm === 0) return lead.mass?.massG ?? 0;
  const [from, to] = reachOf(problem, lead, around, within);
  return Math.min(...from!.flatMap((a) => to!.map((b) => leadMoment(lead, a, b).massG)));
}

/** Where a part's end of a lead can be: the middle of it all first, then a grid over each option's region. */
function pointsOf(
  problem: PlaceProblem,
  lead: Lead,
  part: number,
  at: Around[number] | undefined,
  only: number | undefined,
): Vec3[] {
  const movable = problem.parts[part]!;
  if (at) return [add(at.centreMm, endOffset(movable, at.option, lead.id))];
  const points = movable.options.flatMap((option, k) => {
    if (!fitsRegion(option) || (only !== undefined && only !== k)) return [];
    const ranges = AXES.map((axis) => centreRange(option, axis));
    const off = endOffset(movable, k, lead.id);
    const on = (axis: 0 | 1 | 2, share: number) =>
      ranges[axis]!.lowMm + share * (ranges[axis]!.highMm - ranges[axis]!.lowMm) + off[axis];
    return CUTS.flatMap((i) => CUTS.flatMap((j) => CUTS.map((l): Vec3 => [on(0, i), on(1, j), on(2, l)])));
  });
  if (points.length === 0) return [movable.present.centreMm];
  const mid = points.reduce<Vec3>((sum, point) => add(sum, point), [0, 0, 0]);
  return [[mid[0] / points.length, mid[1] / points.length, mid[2] / points.length], ...points];
}
