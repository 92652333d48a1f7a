import type { Vec3 } from '../geometry/types';
import type { MassMoment } from './travel';

/**
 * One position of a switch with all that it puts aboard beside what is aboard at all times. It may be less than nothing
 * where a position takes off what the fixed mass has in it.
 */
export interface LoadPosition {
  readonly id: string;
  readonly name: string;
  readonly load: MassMoment;
}

/**
 * Something that is in exactly one of its positions: undercarriage up or down, payload on or off. What the positions of
 * several switches put aboard must add up; switches that bear on each other are entered as one with all their combinations.
 */
export interface LoadSwitch {
  readonly id: string;
  readonly name: string;
  /** At least one. */
  readonly positions: readonly LoadPosition[];
}

/** A mass and its first moment along one direction, g and g·mm. */
export interface Loaded {
  readonly massG: number;
  readonly momentGmm: number;
}

/** Which way is sought: the axis (0 station, 1 buttline) and its sense. */
export interface Heading {
  readonly axis: 0 | 1;
  readonly sign: 1 | -1;
}

/** The position chosen at each switch, by its place in the list, and the CG along the heading, mm. */
export interface BestLoad {
  readonly chosen: readonly number[];
  readonly cgMm: number;
}

export const along = ({ axis, sign }: Heading, v: Vec3): number => sign * v[axis];

/** A mass and its first moment along a heading. */
export const loadedBy = ({ massG, momentGmm }: MassMoment, heading: Heading): Loaded => ({
  massG,
  momentGmm: along(heading, momentGmm),
});

export type Options = readonly (readonly Loaded[])[];

/** The most that N − λ·M can be over all combinations of the switches, g·mm, and the choice that gives it. */
export function bestAgainst(options: Options, lambdaMm: number): { chosen: number[]; mostGmm: number } {
  let mostGmm = 0;
  const chosen = options.map((positions) => {
    const gains = positions.map(({ massG, momentGmm }) => momentGmm - lambdaMm * massG);
    const most = Math.max(...gains);
    const size = Math.max(
      ...positions.map(({ massG, momentGmm }) => Math.abs(momentGmm) + Math.abs(lambdaMm * massG)),
    );
    mostGmm += most;
    return gains.findIndex((gain) => gain >= most - 1e-13 * size);
  });
  return { chosen, mostGmm };
}

/**
 * The combination of switches that puts the CG farthest along a heading, for one amount of liquid. Exact, without going
 * through all the combinations: x = N/M is greatest where max(N − x·M) = 0, and for a given x every switch chooses for
 * itself (Dinkelbach, On nonlinear fractional programming, Management Science 13, 1967). Each round either raises x or
 * ends, so it ends; a handful of rounds is usual. Of positions that make no difference the first listed is taken.
 * Every combination must weigh more than nothing.
 */
export function bestLoad(options: Options, aboard: Loaded): BestLoad {
  let { chosen } = bestAgainst(options, 0);
  let cgMm = Number.NEGATIVE_INFINITY;
  let next = stationOf(options, aboard, chosen);
  while (next > cgMm) {
    cgMm = next;
    chosen = bestAgainst(options, cgMm).chosen;
    next = stationOf(options, aboard, chosen);
  }
  return { chosen, cgMm: next };
}

function stationOf(options: Options, aboard: Loaded, chosen: readonly number[]): number {
  let { massG, momentGmm } = aboard;
  options.forEach((positions, k) => {
    const position = positions[chosen[k]!]!;
    massG += position.massG;
    momentGmm += position.momentGmm;
  });
  return momentGmm / massG;
}
