import { lastPerObject } from '../memory/memory';
import { tankTop } from './burnBound';
import type { Bounds } from './loadTypes';
import type { LiquidMoment, MassMoment } from './travel';

/** What every tank holds at every moment along the station axis: masses and moments, moment by moment, tank by tank. */
interface Held {
  readonly massG: Float64Array;
  readonly momentGmm: Float64Array;
  /** All the tanks of a moment together. */
  readonly totalG: Float64Array;
  readonly totalGmm: Float64Array;
}

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
  const held = heldOf(moments, tanksMm.length);
  const hidden = new Array<number>(moments.length - 1).fill(0);
  for (const sign of [1, -1]) raise(hidden, sign, fixed, held, tanksMm);
  return hidden;
}

function raise(
  hidden: number[],
  sign: number,
  fixed: MassMoment,
  held: Held,
  tanksMm: readonly Bounds[],
): void {
  const alwaysGmm = sign * fixed.momentGmm[0];
  const { massG, momentGmm, totalG, totalGmm } = held;
  let farthestMm = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < totalG.length; k += 1) {
    const mm = (alwaysGmm + sign * totalGmm[k]!) / (fixed.massG + totalG[k]!);
    if (mm > farthestMm) farthestMm = mm;
  }
  const rest = alwaysGmm - farthestMm * fixed.massG;
  const tanks = tanksMm.length;
  for (let k = 0; k < hidden.length; k += 1) {
    let over = rest;
    for (let t = 0; t < tanks; t += 1) {
      const [full, empty] = [k * tanks + t, (k + 1) * tanks + t];
      const { min, max } = tanksMm[t]!;
      over += tankTop(
        sign * momentGmm[full]! - farthestMm * massG[full]!,
        sign * momentGmm[empty]! - farthestMm * massG[empty]!,
        massG[full]! - massG[empty]!,
        (sign > 0 ? max[0] : -min[0]) - farthestMm,
        farthestMm - (sign > 0 ? min[0] : -max[0]),
      );
    }
    const mm = over / (fixed.massG + totalG[k + 1]!);
    if (mm > hidden[k]!) hidden[k] = mm;
  }
}

const heldOf = lastPerObject((moments: readonly LiquidMoment[], tanks: number): Held => {
  const held: Held = {
    massG: new Float64Array(moments.length * tanks),
    momentGmm: new Float64Array(moments.length * tanks),
    totalG: Float64Array.from(moments, ({ massG }) => massG),
    totalGmm: Float64Array.from(moments, ({ momentGmm }) => momentGmm[0]),
  };
  moments.forEach(({ byTank = [] }, k) => {
    byTank.forEach((tank, t) => {
      held.massG[k * tanks + t] = tank.massG;
      held.momentGmm[k * tanks + t] = tank.momentGmm[0];
    });
  });
  return held;
});
