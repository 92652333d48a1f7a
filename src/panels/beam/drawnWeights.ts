import { type Axis, axisToPx } from '../../store/axisStore';
import type { Bench } from '../../store/bench';
import { roleLooks } from '../roleLooks';
import type { Line } from './lines';
import { type Rows, rowsOf } from './rows';
import { type Block, stackBlocks, stackFits } from './stackBlocks';
import { areaPerGram, type Weight, weightSizePx, weightsAlong } from './weights';

/** The largest part and the largest piece of structure, as shares of their side of the beam. */
const PART_SHARE = 0.58;
const STRUCTURE_SHARE = 1;

export interface Drawn {
  readonly weight: Weight;
  readonly xPx: number;
  /** The nearer edge to the beam, px off it; structure hangs below. */
  readonly offPx: number;
  readonly sizePx: number;
}

/** What stands on the centre line pulls to neither side, mm; across the wings it would only be in the way. */
const CENTRED_MM = 0.5;

export const shownWeights = ({ balance, view }: Bench, line: Line): readonly Weight[] => {
  const { selectedId } = view.getState();
  const weights = weightsAlong(balance.get(), line.axis);
  return line.axis === 0
    ? weights
    : weights.filter(({ atMm, sourceId }) => Math.abs(atMm) >= CENTRED_MM || sourceId === selectedId);
};

interface Side {
  readonly structure: boolean;
  readonly roomPx: number;
}

const hungPx = (rows: Rows) => rows.ruler - rows.beam - 6;
const standingPx = (rows: Rows) => rows.beam - rows.weightsTop;

const sides = (rows: Rows): readonly Side[] => [
  { structure: true, roomPx: hungPx(rows) },
  { structure: false, roomPx: standingPx(rows) },
];

/** One side of the beam at a scale, px² for each gram. */
function blocksOf(weights: readonly Weight[], axis: Axis, scale: number, structure: boolean): Block[] {
  return weights
    .filter(({ group }) => (group === 'structure') === structure)
    .map(({ key, atMm, massG, role }) => ({
      key,
      xPx: axisToPx(axis, atMm),
      sizePx: weightSizePx(massG, scale, roleLooks[role].filled),
    }));
}

/** The scale goes down in steps of this, at most so many. */
const SCALE_STEP = 0.88;
const MOST_STEPS = 16;

/** The largest scale at which what stands on the beam need not be pressed together, by halving the steps down to it. */
export function fittingScale(weights: readonly Weight[], axis: Axis, rows: Rows): number {
  const largest = areaPerGram(weights, PART_SHARE * standingPx(rows), STRUCTURE_SHARE * hungPx(rows));
  const fits = (steps: number) =>
    stackFits(blocksOf(weights, axis, largest * SCALE_STEP ** steps, false), standingPx(rows));
  let [from, to] = [0, MOST_STEPS];
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    if (fits(middle)) to = middle;
    else from = middle + 1;
  }
  return largest * SCALE_STEP ** from;
}

/** Everything that stands on or hangs from the beam, with its place on the screen. */
export function drawnWeights(bench: Bench, line: Line, scale: number): Drawn[] {
  const axis = line.pick(bench.axis.getState());
  const weights = shownWeights(bench, line);
  const byKey = new Map(weights.map((weight) => [weight.key, weight]));
  return sides(rowsOf(bench.view.getState()))
    .flatMap(({ structure, roomPx }) => stackBlocks(blocksOf(weights, axis, scale, structure), roomPx))
    .flatMap(({ key, ...at }) => {
      const weight = byKey.get(key);
      return weight ? [{ weight, ...at }] : [];
    });
}

export const isHung = ({ weight }: Drawn) => weight.group === 'structure';

/** The weight under a press: the nearest whose square is within reach, the selected one first. */
export function weightAt(
  drawn: readonly Drawn[],
  beamPx: number,
  x: number,
  y: number,
  reachPx: number,
): string | null {
  let best: { id: string; off: number } | null = null;
  for (const mark of drawn) {
    const top = isHung(mark) ? beamPx + mark.offPx + 4 : beamPx - mark.offPx - mark.sizePx;
    const dx = Math.max(0, Math.abs(x - mark.xPx) - mark.sizePx / 2);
    const dy = Math.max(0, top - y, y - top - mark.sizePx);
    const off = Math.hypot(dx, dy);
    if (off <= reachPx && (!best || off < best.off)) best = { id: mark.weight.sourceId, off };
  }
  return best?.id ?? null;
}
