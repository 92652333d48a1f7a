import { lastOnly, perObject } from '../../engine/memory/memory';
import type { Balance } from '../balance/balance';
import { cgErrorOf, LINE_95 } from '../balance/certainty';
import { estimateStability } from '../stability/estimateStability';
import { type StabilityInput, stabilityInput } from '../stability/stability';
import { benchBalance, type LessonBench } from './bench';
import type { Estimator, ShownQuantity } from './types';

/**
 * Finds the neutral point where it stands, which takes some hundred milliseconds once for each shape of the airframe. A page
 * may hand in its worker's answer instead.
 */
export const estimateHere: Estimator = (aircraft) => estimated(stabilityInput(aircraft));

const estimated = perObject((input: StabilityInput) => {
  const answer = estimateStability(input, 'fine');
  return answer && 'fault' in answer ? null : answer;
});

/** Whether a figure hangs on the estimate of the neutral point. */
export const needsEstimate = ({ of }: Pick<ShownQuantity, 'of'>): boolean =>
  of === 'margin' || of === 'neutralPoint';

const INERTIA_AXIS = { roll: 'xx', pitch: 'yy', yaw: 'zz' } as const;

/** g·mm² in a kg·m². */
export const GMM2_PER_KGM2 = 1e9;

/**
 * A figure that the bench shows, in the unit of its quantity: mm, % MAC, g, kg·m² or ml. Null where there is none, as without
 * mass, without an estimate, or of a tank that is not aboard.
 */
export function figureAt(
  bench: LessonBench,
  quantity: ShownQuantity,
  estimator: Estimator = estimateHere,
): number | null {
  const balance = balanceOf(bench, needsEstimate(quantity) ? estimator : null);
  return balance.finite ? figureOf(bench, balance, quantity) : null;
}

const balanceOf = lastOnly((bench: LessonBench, estimator: Estimator | null) =>
  benchBalance(bench, estimator ?? undefined),
);

function figureOf(bench: LessonBench, balance: Balance, quantity: ShownQuantity): number | null {
  switch (quantity.of) {
    case 'cgStation':
      return balance.cgMm?.[0] ?? null;
    case 'cgButtline':
      return balance.cgMm?.[1] ?? null;
    case 'margin':
      return balance.margin?.nowPct ?? null;
    case 'neutralPoint':
      return balance.estimate?.neutralPointMm ?? null;
    case 'mass':
      return balance.massG;
    case 'inertia':
      return balance.inertiaAboutCgGmm2[INERTIA_AXIS[quantity.about]] / GMM2_PER_KGM2;
    case 'cgPlusMinus': {
      const error = cgErrorOf(bench.aircraft, balance);
      return error && LINE_95 * error.sigmaMm[0];
    }
    case 'liquid':
      return balance.liquids.find(({ tankId }) => tankId === quantity.tankId)?.volumeMl ?? null;
  }
}
