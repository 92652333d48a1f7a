import { type Axis, axisToPx } from '../../store/axisStore';
import type { Bench } from '../../store/bench';
import { roleLooks } from '../roleLooks';
import { type Line, rows } from './lines';
import { areaPerGram, stackBlocks, stackTop, type Weight, weightSizePx, weightsAlong } from './weights';

/** The largest part and the largest piece of structure, px across. */
const PART_PX = 41;
const STRUCTURE_PX = 44;

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

const sides: readonly Side[] = [
  { structure: true, roomPx: rows.ruler - rows.beam - 6 },
  { structure: false, roomPx: rows.beam - rows.weightsTop },
];

/** One side of the beam stacked at a scale, px² for each gram. */
function stackSide(weights: readonly Weight[], axis: Axis, scale: number, side: Side) {
  const blocks = weights
    .filter(({ group }) => (group === 'structure') === side.structure)
    .map(({ key, atMm, massG, role }) => ({
      key,
      xPx: axisToPx(axis, atMm),
      sizePx: weightSizePx(massG, scale, roleLooks[role].filled),
    }));
  return stackBlocks(blocks, side.roomPx);
}

/** The largest scale at which what stands on the beam need not be pressed together, tried in steps. */
export function fittingScale(weights: readonly Weight[], axis: Axis): number {
  let scale = areaPerGram(weights, PART_PX, STRUCTURE_PX);
  for (let tries = 0; tries < 16; tries += 1) {
    const free = stackSide(weights, axis, scale, { structure: false, roomPx: Number.POSITIVE_INFINITY });
    if (stackTop(free) <= rows.beam - rows.weightsTop) break;
    scale *= 0.88;
  }
  return scale;
}

/** Everything that stands on or hangs from the beam, with its place on the screen. */
export function drawnWeights(bench: Bench, line: Line, scale: number): Drawn[] {
  const axis = line.pick(bench.axis.getState());
  const weights = shownWeights(bench, line);
  const byKey = new Map(weights.map((weight) => [weight.key, weight]));
  return sides
    .flatMap((side) => stackSide(weights, axis, scale, side))
    .flatMap(({ key, ...at }) => {
      const weight = byKey.get(key);
      return weight ? [{ weight, ...at }] : [];
    });
}

export const isHung = ({ weight }: Drawn) => weight.group === 'structure';

/** The weight under a press: the nearest whose square is within reach, the selected one first. */
export function weightAt(drawn: readonly Drawn[], x: number, y: number, reachPx: number): string | null {
  let best: { id: string; off: number } | null = null;
  for (const one of drawn) {
    const top = isHung(one) ? rows.beam + one.offPx + 4 : rows.beam - one.offPx - one.sizePx;
    const dx = Math.max(0, Math.abs(x - one.xPx) - one.sizePx / 2);
    const dy = Math.max(0, top - y, y - top - one.sizePx);
    const off = Math.hypot(dx, dy);
    if (off <= reachPx && (!best || off < best.off)) best = { id: one.weight.sourceId, off };
  }
  return best?.id ?? null;
}
