import { type ArrangeOrder, arrange } from './arrange';
import { type ArrangeAnswer, SAME_MARGIN_MM } from './searchState';
import { shrunkBand } from './shrunkBand';
import { SAME_G } from './tolerances';
import type { Arrangement, PlaceProblem } from './types';

/** One point of a trade-off: an arrangement, and whether nothing with less ballast does as well. */
export interface TradeOffPoint {
  /** What was asked for: a margin in mm, or a number of moves. */
  readonly asked: number;
  readonly arrangement: Arrangement;
  readonly proved: boolean;
}

interface CurveOrder extends ArrangeOrder {
  /** Told of each point as it is found. */
  readonly onPoint?: (point: TradeOffPoint) => void;
}

/**
 * Least ballast for each margin asked for, from what the least ballast gives up to half the band (epsilon constraint:
 * Y. Y. Haimes, L. S. Lasdon, D. A. Wismer, IEEE Transactions on Systems, Man, and Cybernetics SMC-1, 1971). Margins are
 * the least distance of any load state's CG inside the band, mm. Ends where no more can be had.
 */
export function ballastForMargin(problem: PlaceProblem, points: number, order: CurveOrder): TradeOffPoint[] {
  const halfMm = (problem.band.aftMm - problem.band.forwardMm) / 2;
  const found: TradeOffPoint[] = [];
  const timeMs = order.timeMs / points;
  const { wantedMarginMm: wantedMm = 0, ...plain } = problem;
  const first = keep(found, 0, arrange(plain, { ...order, timeMs }), order);
  if (!first) return found;
  const fromMm = first.arrangement.marginMm;
  const asked = Array.from({ length: points - 1 }, (_, i) => {
    // The very middle of the band is a single point: stop just short of it.
    return fromMm + ((halfMm - fromMm) * (i + 1)) / (points - 0.9);
  });
  // What was wanted is on the curve too, where the least ballast gives less.
  if (wantedMm > fromMm + SAME_MARGIN_MM && wantedMm < halfMm) asked.push(wantedMm);
  for (const askedMm of asked.sort((a, b) => a - b)) {
    const band = shrunkBand(plain.band, askedMm);
    if (!band || askedMm <= fromMm + SAME_MARGIN_MM || order.cancelled?.()) break;
    const answer = arrange({ ...plain, band }, { ...order, timeMs });
    if (!keep(found, askedMm, widened(answer, askedMm), order)) break;
  }
  return found;
}

/** Least ballast for each number of moves, from none up; ends where more moves save nothing more. */
export function ballastForMoves(problem: PlaceProblem, order: CurveOrder): TradeOffPoint[] {
  const found: TradeOffPoint[] = [];
  const free = arrange(problem, { ...order, timeMs: order.timeMs / 3 });
  if (!free.best) return found;
  for (let moves = 0; moves < free.best.moves; moves++) {
    if (order.cancelled?.()) return found;
    const timeMs = (order.timeMs * 2) / 3 / free.best.moves;
    const point = keep(found, moves, arrange(problem, { ...order, timeMs, mostMoves: moves }), order);
    if (point && free.proved && point.arrangement.ballastG <= free.boundG + SAME_G) return found;
  }
  keep(found, free.best.moves, free, order);
  return found;
}

/** An arrangement found in a band shrunk by a margin, told against the whole band. */
function widened(answer: ArrangeAnswer, byMm: number): ArrangeAnswer {
  return answer.best
    ? { ...answer, best: { ...answer.best, marginMm: answer.best.marginMm + byMm } }
    : answer;
}

function keep(
  found: TradeOffPoint[],
  asked: number,
  { best, proved }: ArrangeAnswer,
  { onPoint }: CurveOrder,
): TradeOffPoint | null {
  if (!best) return null;
  const point = { asked, arrangement: best, proved };
  found.push(point);
  onPoint?.(point);
  return point;
}
