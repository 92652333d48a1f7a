import { type MacLine, pctMacToStation } from '../../engine/wing/planform';
import { type Axis, axisToPx, pxToAxis } from '../../store/axisStore';

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

/** Numerals on the enlarged travel stand at least so far apart, px. */
const TRAVEL_NUMERALS_PX = 46;

/** The marks in % MAC between two columns of an enlarged stretch, which may lie anywhere along the chord and beyond it. */
export function macMarksBetween(mac: MacLine, axis: Axis, fromPx: number, toPx: number): MacMark[] {
  const pctPx = mac.macMm / 100 / Math.abs(axis.mmPerPx);
  const step = [0.1, 0.2, 0.5, 1, 2, 5, 10, 25, 50].find((pct) => pct * pctPx >= TRAVEL_NUMERALS_PX) ?? 100;
  const at = (px: number) => (pxToAxis(axis, px) - mac.lemacMm) / (mac.macMm / 100);
  const [low, high] = [at(fromPx), at(toPx)].sort((a, b) => a - b) as [number, number];
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.max(0, Math.floor(high / step) - first + 1) }, (_, i) => {
    const pct = Math.round((first + i) * step * 10) / 10;
    return { pct, xPx: axisToPx(axis, pctMacToStation(mac, pct)), numeral: true };
  });
}
