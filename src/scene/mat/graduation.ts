import { stepsDown, stepsUp } from '../../engine/geometry/wholeSteps';
import { formatNumber, fromOwnUnit, toOwnUnit, type UnitSystem } from '../../model/units';
import type { Numeral } from './ruleNumerals';

/** Fine, middle and coarse lines of the mat, mm; figures stand at the coarse ones. */
export type Steps = readonly [fine: number, middle: number, coarse: number];

/** Millimetres by 10, 50 and 100; inches by ½, 2 and 4. */
export const graduation = (units: UnitSystem): Steps =>
  units === 'metric'
    ? [10, 50, 100]
    : [fromOwnUnit(0.5, 'length', units), fromOwnUnit(2, 'length', units), fromOwnUnit(4, 'length', units)];

/** Where the rule is printed in the drawing plane, and how it counts. */
export interface RuleRun {
  readonly fromMm: number;
  readonly toMm: number;
  /** Where it reads 0. */
  readonly zeroMm: number;
  /** The line's place up the plane. */
  readonly atMm: number;
  /** Reads the same both ways from 0, as buttlines do in front elevation. */
  readonly mirrored: boolean;
  /** Only every so many coarse lines carry a figure. */
  readonly every: number;
  /** Height of a figure's cell, mm; the ticks go with it. */
  readonly figureMm: number;
}

/** The figures of a rule. */
export function ruleNumerals(run: RuleRun, units: UnitSystem): Numeral[] {
  const step = graduation(units)[2] * run.every;
  const numerals: Numeral[] = [];
  const first = stepsUp((run.fromMm - run.zeroMm) / step);
  const last = stepsDown((run.toMm - run.zeroMm) / step);
  for (let i = first; i <= last; i += 1) {
    const reading = Math.round(toOwnUnit(i * step, 'length', units));
    const text = formatNumber(run.mirrored ? Math.abs(reading) : reading, 0);
    numerals.push({ text, at: [run.zeroMm + i * step, run.atMm - 0.52 * run.figureMm] });
  }
  return numerals;
}
