import { type Heading, loadedBy } from './bestLoad';
import { beyond, mostBetween, type Reach } from './burnBound';
import type { Bounds } from './loadTypes';
import type { LiquidMoment, MassMoment } from './travel';

const HEADINGS: readonly Heading[] = [
  { axis: 0, sign: 1 },
  { axis: 0, sign: -1 },
];

/**
 * How far beyond the sampled ends of a travel, fore or aft, the CG can at most get between each two neighbouring moments,
 * mm: one figure fewer than there are moments. It asks that each tank's liquid is part of the liquid it had before, as it
 * is at one attitude. `tanksMm` are boxes around the tanks of `byTank`. Empty where a moment weighs nothing.
 */
export function hiddenBetweenMoments(
  fixed: MassMoment,
  moments: readonly LiquidMoment[],
  tanksMm: readonly Bounds[],
): number[] {
  if (moments.length < 2 || moments.some(({ massG }) => !(fixed.massG + massG > 0))) return [];
  const hidden = new Array<number>(moments.length - 1).fill(0);
  for (const heading of HEADINGS) {
    const always = loadedBy(fixed, heading);
    const reaches = tanksMm.map(({ min, max }): Reach => {
      const ends = [heading.sign * min[heading.axis], heading.sign * max[heading.axis]];
      return [Math.min(...ends), Math.max(...ends)];
    });
    const tanks = moments.map(({ byTank = [] }) => byTank.map((tank) => loadedBy(tank, heading)));
    const farthestMm = moments.reduce((most, moment) => {
      const liquid = loadedBy(moment, heading);
      return Math.max(most, (always.momentGmm + liquid.momentGmm) / (always.massG + liquid.massG));
    }, Number.NEGATIVE_INFINITY);
    const rest = beyond(always, farthestMm);
    for (let k = 0; k < hidden.length; k += 1) {
      const over = rest + mostBetween(tanks[k]!, tanks[k + 1]!, reaches, farthestMm);
      hidden[k] = Math.max(hidden[k]!, over / (always.massG + moments[k + 1]!.massG));
    }
  }
  return hidden;
}
