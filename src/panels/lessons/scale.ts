import { formatNumber } from '../../model/units';
import { type Axis, axisToPx, fitAxis } from '../../store/axisStore';
import { roundStep } from '../beam/ticks';

/** The least distance between numerals, px. */
const APART_PX = 64;
/** Room at either end, so that a marker at the end can be taken hold of, px. */
const EDGE_PX = 34;
/** An axis of the stage's own scale must be so much of its width, or the marker could not be set finely. */
const LEAST_SHARE = 0.3;

/** Where the values of a question lie along the width of the page. */
export interface Scale {
  readonly axis: Axis;
  readonly widthPx: number;
  /** The stage's own axis where that runs along this one but the scale is another: this one is enlarged then. */
  readonly stage: Axis | null;
}

/**
 * From the least to the most of an axis: under the stage in its own scale where it runs along it, else over the whole width.
 * `facing` −1 where the figures fall to the right, as buttlines do seen from ahead.
 */
export function scaleOf(
  { least, most }: { readonly least: number; readonly most: number },
  widthPx: number,
  stage: Axis | null,
  facing: 1 | -1 = 1,
): Scale {
  if (stage) {
    const ends = [axisToPx(stage, least), axisToPx(stage, most)];
    const [left, right] = [Math.min(...ends), Math.max(...ends)];
    if (left >= 0 && right <= widthPx && right - left >= LEAST_SHARE * widthPx)
      return { axis: stage, widthPx, stage: null };
  }
  const axis = fitAxis({ lowMm: least, highMm: most }, widthPx, EDGE_PX, facing);
  return { axis, widthPx, stage };
}

interface Tick {
  readonly px: number;
  readonly numeral: string | null;
}

/** Ticks between two values; `size` is how much of the value the shown unit is, `zero` where its figures begin. */
export function scaleTicks(
  { axis }: Scale,
  { least, most }: { readonly least: number; readonly most: number },
  size: number,
  zero: number,
): readonly Tick[] {
  const { step, parts } = roundStep((APART_PX * Math.abs(axis.mmPerPx)) / size);
  const minor = step / parts;
  const places = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const [from, to] = [(least - zero) / size / minor, (most - zero) / size / minor];
  const ticks: Tick[] = [];
  for (let n = Math.ceil(from - 1e-9); n <= Math.floor(to + 1e-9); n += 1)
    ticks.push({
      px: axisToPx(axis, zero + n * minor * size),
      numeral: n % parts === 0 ? formatNumber(n * minor, places) : null,
    });
  return ticks;
}

/** A value on the axis' own steps, and within its ends. */
export function steppedValue(
  value: number,
  { least, most, step }: { readonly least: number; readonly most: number; readonly step: number },
): number {
  const whole = least + Math.round((value - least) / step) * step;
  return Math.min(most, Math.max(least, Number(whole.toPrecision(12))));
}
