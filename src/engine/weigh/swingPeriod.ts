import type { Figure, Refusal } from './figure';
import { refusal } from './figure';

/** One run of the timer: so many full swings, to and fro, in so many seconds. */
export interface SwingRun {
  readonly swings: number;
  readonly timeS: number;
}

export interface SwingPeriod extends Figure {
  readonly ok: true;
}

/** What a thumb on a timer is off by for a whole run, s, one sigma. Common practice, no source. */
const THUMB_SIGMA_S = 0.1;
/** From the median absolute deviation to a sigma, and from the scatter to that of a median (both for normal errors). */
const MAD_TO_SIGMA = 1.4826;
const MEDIAN_TO_MEAN = Math.sqrt(Math.PI / 2);

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/**
 * The period from several runs, s: the median, so that one miscounted run does no harm. Its sigma is the larger of what the
 * runs scatter by (from their median deviation) and what the thumb alone would make of them.
 */
export function periodOfRuns(runs: readonly SwingRun[], thumbSigmaS = THUMB_SIGMA_S): SwingPeriod | Refusal {
  if (runs.length === 0) return refusal('Time one run at least.');
  const wrong = runs.findIndex(({ swings, timeS }) => !(swings >= 1 && timeS > 0 && Number.isFinite(timeS)));
  if (wrong >= 0) return refusal(`Run ${wrong + 1}: expected one swing or more and a time of more than 0 s.`);
  const periods = runs.map(({ swings, timeS }) => timeS / swings);
  const value = median(periods);
  const overRuns = (runs.length < 3 ? 1 : MEDIAN_TO_MEAN) / Math.sqrt(runs.length);
  const scatter =
    runs.length < 3 ? 0 : MAD_TO_SIGMA * median(periods.map((period) => Math.abs(period - value)));
  const thumb = median(runs.map(({ swings }) => thumbSigmaS / swings));
  return { ok: true, value, sigma: Math.max(scatter, thumb) * overRuns };
}

/**
 * A run from taps, one for each full swing, in s: the median slope of tap time over tap number (Theil–Sen), so that one
 * late tap does no harm; a tap left out is counted as two swings. Needs three taps.
 */
export function runOfTaps(tapsS: readonly number[]): ({ readonly ok: true } & SwingRun) | Refusal {
  if (tapsS.length < 3)
    return refusal(`Tap along for two full swings at least: ${tapsS.length} taps so far.`);
  const gaps = tapsS.slice(1).map((tap, index) => tap - tapsS[index]!);
  if (gaps.some((gap) => !(gap > 0))) return refusal('The taps must follow one another.');
  const usual = median(gaps);
  const numbers = [0];
  for (const gap of gaps) numbers.push(numbers.at(-1)! + Math.max(1, Math.round(gap / usual)));
  const slopes = tapsS.flatMap((late, j) =>
    tapsS.slice(0, j).flatMap((early, i) => {
      const swings = numbers[j]! - numbers[i]!;
      return swings > 0 ? [(late - early) / swings] : [];
    }),
  );
  const swings = numbers.at(-1)!;
  return { ok: true, swings, timeS: median(slopes) * swings };
}
