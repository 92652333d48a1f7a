import type { Goal } from './goal';
import type { Workshop } from './trial';

/** Forward where the CG is too far aft, and the other way round. */
export function helpfulWay({ states }: Workshop, { axis, lowMm, highMm }: Goal): 1 | -1 {
  let [over, under] = [0, 0];
  for (const { balance } of states) {
    for (const { cgMm } of balance.travel) {
      over = Math.max(over, cgMm[axis] - highMm);
      under = Math.max(under, lowMm - cgMm[axis]);
    }
  }
  return over >= under ? -1 : 1;
}
