import { type MacLine, pctMacToStation } from '../../engine/wing/planform';
import { type Axis, axisToPx } from '../../store/axisStore';

export interface MacMark {
  readonly pct: number;
  readonly xPx: number;
  readonly numeral: boolean;
}

/** The least distance between numerals and between ticks, px. */
const NUMERALS_PX = 25;
const TICKS_PX = 5;

/** The marks of a scale in % MAC: as fine as there is room for, with numerals at both ends or at none. */
export function macMarks(mac: MacLine, axis: Axis): MacMark[] {
  const lengthPx = mac.macMm / Math.abs(axis.mmPerPx);
  const finest = (steps: readonly number[], apartPx: number) =>
    steps.find((step) => (step / 100) * lengthPx >= apartPx) ?? 100;
  const numerals = finest([10, 25, 50], NUMERALS_PX);
  const ticks = Math.min(numerals, finest(numerals === 10 ? [1, 2, 5] : [5, 25, 50], TICKS_PX));
  return Array.from({ length: 100 / ticks + 1 }, (_, i) => i * ticks).map((pct) => ({
    pct,
    xPx: axisToPx(axis, pctMacToStation(mac, pct)),
    numeral: lengthPx >= NUMERALS_PX && pct % numerals === 0,
  }));
}
