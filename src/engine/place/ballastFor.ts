import { TOUCH_MM } from '../balance/band';
import type { BalanceRow } from './balanceRows';
import { WHOLE_WITHIN } from './tolerances';
import type { BallastSpot } from './types';

/** A spot and the most steps that it takes. */
export interface Stack {
  readonly spot: BallastSpot;
  readonly most: number;
}

/** Ballast that brings rows within their limits, or as near as it can. */
export interface Bettered {
  /** g for each spot. */
  readonly gramsG: readonly number[];
  readonly ballastG: number;
  /** What the worst row is short by, mm; 0 with none. */
  readonly shortMm: number;
  /** Least distance inside the band, mm. */
  readonly marginMm: number;
}

/** Amounts at a second spot that are looked at besides none. */
const LEVELS = 8;
/** Rounding of sums, mm. */
const HAIR_MM = 2e-5;

/**
 * The least ballast at one spot, or where that is not enough and `two` says so at two of which one is taken in coarse steps, for
 * rows that come to these values without it, g·mm. Quick rather than the least of all: what it finds is settled by the
 * program afterwards.
 */
export function ballastFor(
  values: readonly number[],
  rows: readonly BalanceRow[],
  stacks: readonly Stack[],
  two: boolean,
): Bettered {
  const best = { shortMm: 0, marginMm: 0, ballastG: 0, k: -1, g: 0, second: -1, secondG: 0 };
  const look = (k: number, g: number, second: number, secondG: number): void => {
    let [shortMm, marginMm] = [0, Number.POSITIVE_INFINITY];
    const ballastG = g + secondG;
    for (let r = 0; r < rows.length; r++) {
      const { massG, axis, perSpot } = rows[r]!;
      let value = values[r]!;
      if (k >= 0) value += perSpot[k]! * g;
      if (second >= 0) value += perSpot[second]! * secondG;
      const insideMm = value / (massG + ballastG);
      if (insideMm < -HAIR_MM && -insideMm > shortMm) shortMm = -insideMm;
      if (axis === 0 && insideMm < marginMm) marginMm = insideMm;
    }
    const isFirst = k < 0 && second < 0;
    if (
      !isFirst &&
      shortMm > best.shortMm - TOUCH_MM &&
      !(shortMm === best.shortMm && ballastG < best.ballastG)
    )
      return;
    Object.assign(best, { shortMm, marginMm, ballastG, k, g, second, secondG });
  };
  const alone = (second: number, secondG: number): void => {
    for (let k = 0; k < stacks.length; k++) {
      if (k === second) continue;
      for (const g of worthTrying(values, rows, k, stacks[k]!, second, secondG)) look(k, g, second, secondG);
    }
  };
  look(-1, 0, -1, 0);
  if (best.shortMm > 0) alone(-1, 0);
  if (best.shortMm > 0 && two) {
    stacks.forEach(({ spot, most }, second) => {
      for (let level = 1; level <= LEVELS && most > 0; level++)
        alone(second, Math.round((most * level) / LEVELS) * spot.stepG);
    });
  }
  const { shortMm, marginMm, ballastG } = best;
  const gramsG = stacks.map((_, i) => (i === best.k ? best.g : i === best.second ? best.secondG : 0));
  return { gramsG, ballastG, shortMm, marginMm };
}

/** Where one spot's amount meets a row, to whole steps, its most and what lies between. */
function worthTrying(
  values: readonly number[],
  rows: readonly BalanceRow[],
  k: number,
  { spot: { stepG }, most }: Stack,
  second: number,
  secondG: number,
): number[] {
  if (most === 0) return [];
  let [least, greatest] = [0, most];
  for (let r = 0; r < rows.length; r++) {
    const { perSpot } = rows[r]!;
    const value = values[r]! + (second >= 0 ? perSpot[second]! * secondG : 0);
    const perStep = perSpot[k]! * stepG;
    if (perStep > 0 && value < 0) least = Math.max(least, Math.ceil(-value / perStep - WHOLE_WITHIN));
    if (perStep < 0 && value > 0) greatest = Math.min(greatest, Math.floor(value / -perStep + WHOLE_WITHIN));
  }
  least = Math.min(least, most);
  const steps = new Set([least, greatest, Math.round((least + greatest) / 2)]);
  return [...steps].filter((count) => count > 0).map((count) => count * stepG);
}
