import { TOUCH_MM } from '../balance/band';
import type { Vec3 } from '../geometry/types';
import { canPrecede, type Occupant } from './regions';

/** A thing to be packed, with what a millimetre aft costs. Obstacles cost nothing and have no play. */
export interface PackItem extends Occupant {
  readonly perMm: number;
}

/** Things of which no two can stand beside or above each other, and the gap that any two keep at least, mm. */
export interface Line {
  readonly members: readonly number[];
  readonly gapMm: number;
}

/** A set of things that must stand one behind another, the costliest taken first. */
export function standingInLine(items: readonly PackItem[], gapOf: (i: number, j: number) => number): Line {
  const members: number[] = [];
  let gapMm = Number.POSITIVE_INFINITY;
  const order = items.map((_, i) => i).sort((i, j) => items[j]!.perMm - items[i]!.perMm);
  for (const i of order) {
    const inLine = members.every((j) => {
      const gap = gapOf(i, j);
      return (
        gap >= 0 &&
        ([1, 2] as const).every(
          (axis) =>
            !canPrecede(items[i]!, items[j]!, gap, axis) && !canPrecede(items[j]!, items[i]!, gap, axis),
        )
      );
    });
    if (!inLine) continue;
    for (const j of members) gapMm = Math.min(gapMm, gapOf(i, j));
    members.push(i);
  }
  return { members, gapMm: members.length > 1 ? gapMm : 0 };
}

/**
 * What standing in line adds at least to the cost of everything at its earliest. A line is one machine, a length its
 * processing time, an earliest corner its release date; with pre-emption it is best to let the costliest per length that is
 * there go first, and the mean of the stretches that a thing then takes is no farther aft than its middle can be on average
 * (M. X. Goemans, Improved approximation algorithms for scheduling with release dates, SODA 1997).
 */
export function lineSurplus(
  items: readonly PackItem[],
  corners: readonly Vec3[],
  { members, gapMm }: Line,
): number {
  if (members.length < 2) return 0;
  const jobs = members.map((i) => {
    const lengthMm = items[i]!.sizeMm[0] + gapMm;
    const fromMm = corners[i]![0];
    return { fromMm, lengthMm, leftMm: lengthMm, perMm: items[i]!.perMm, momentMm2: 0 };
  });
  jobs.sort((a, b) => b.perMm * a.lengthMm - a.perMm * b.lengthMm);
  let at = Math.min(...jobs.map(({ fromMm }) => fromMm));
  for (;;) {
    const job = jobs.find(({ fromMm, leftMm }) => leftMm > 0 && fromMm <= at);
    const next = jobs.reduce(
      (soonest, { fromMm, leftMm }) => (leftMm > 0 && fromMm > at ? Math.min(soonest, fromMm) : soonest),
      Number.POSITIVE_INFINITY,
    );
    if (!job) {
      if (next === Number.POSITIVE_INFINITY) break;
      at = next;
      continue;
    }
    const runMm = Math.min(job.leftMm, next - at);
    job.momentMm2 += runMm * (at + runMm / 2);
    // A sliver of rounding must not keep a job alive.
    job.leftMm = runMm >= job.leftMm - TOUCH_MM ? 0 : job.leftMm - runMm;
    at += runMm;
  }
  return jobs.reduce((sum, { fromMm, lengthMm, perMm, momentMm2 }) => {
    const cornerMm = momentMm2 / lengthMm - lengthMm / 2;
    return sum + perMm * (cornerMm - fromMm);
  }, 0);
}
