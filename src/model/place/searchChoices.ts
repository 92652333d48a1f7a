import { type ArrangeOrder, arrange } from '../../engine/place/arrange';
import { SAME_G } from '../../engine/place/tolerances';
import { ballastForMoves, type TradeOffPoint } from '../../engine/place/tradeOff';
import type { Arrangement } from '../../engine/place/types';
import { recheckArrangement } from './applyArrangement';
import { asPresent } from './asBefore';
import { groundOf } from './ground';
import { hunt, placesOf } from './hunt';
import { type Candidate, soundestSoFar } from './soundest';
import type { ChoicesAsk } from './tasks';

/** The order of a search with what is told of each point. */
export interface ChoicesOrder extends Omit<ArrangeOrder, 'onProgress'> {
  readonly onPoint: (point: TradeOffPoint) => void;
}

/** Of the time for a point: what the climb may take. The program then says whether less would do. */
const CLIMB_SHARE = 0.6;
/** The very middle of the band is a single point: the last margin asked for stops short of it, in shares of a step. */
const SHORT_OF_MIDDLE = 0.1;

/**
 * Least ballast for each margin asked for, from what is offered up to the middle of the band, only of what the balance and the
 * fit say can be built; told point by point. Each is climbed to from the one before it. A point is proved where the program,
 * which knows less than the fit, has none with less ballast. Ends where no more margin was had.
 */
export function choicesForMargin(ask: ChoicesAsk, points: number, order: ChoicesOrder): TradeOffPoint[] {
  const { aircraft, settings, problem, offered } = ask;
  const { down, alsoDown = [], emptied = [] } = settings;
  const downs = [down, ...alsoDown];
  const { wantedMarginMm: _wanted, ...plain } = problem;
  const halfMm = (plain.band.aftMm - plain.band.forwardMm) / 2;
  const found: TradeOffPoint[] = [];
  let from = placesOf(problem, offered.placed) ?? asPresent(problem);
  const { solve, now } = order;
  const endMs = now() + order.timeMs;
  const tell = (askedMm: number, arrangement: Arrangement, boundG: number) => {
    const point = { asked: askedMm, arrangement, proved: arrangement.ballastG <= boundG + SAME_G };
    found.push(point);
    order.onPoint(point);
  };
  const leastMm = settings.wantedMarginMm ?? 0;
  for (let k = 0; k < points && now() < endMs; k++) {
    const askedMm = leastMm + ((halfMm - leastMm) * k) / (points - 1 + SHORT_OF_MIDDLE);
    const timeMs = (endMs - now()) / (points - k);
    const untilMs = now() + timeMs * CLIMB_SHARE;
    const soundest = soundestSoFar(
      (best, of) => recheckArrangement(aircraft, of, best, downs, { emptied, waysIn: true }),
      askedMm,
      () => {},
    );
    const ground = groundOf(aircraft, downs, emptied, () => untilMs - now());
    const aim = { ...problem, wantedMarginMm: askedMm };
    if (offered.marginMm >= askedMm) soundest.take({ best: offered, problem, keptMarginMm: askedMm });
    if (from) hunt(aim, from, [], { ground, soundest, solve });
    const answer = arrange(aim, { solve, now, timeMs: timeMs * (1 - CLIMB_SHARE) });
    const { best, boundG, keptMarginMm } = answer;
    if (keptMarginMm < askedMm && boundG === Number.POSITIVE_INFINITY) break;
    if (best && keptMarginMm >= askedMm) soundest.take({ best, problem: aim, keptMarginMm: askedMm });
    const taken: Candidate | null = soundest.best();
    if (!taken) continue;
    tell(askedMm, taken.best, keptMarginMm >= askedMm ? boundG : 0);
    from = placesOf(problem, taken.best.placed) ?? from;
  }
  return found;
}

/** Ballast against moves, likewise; what is offered is among them. */
export function choicesForMoves(ask: ChoicesAsk, order: ChoicesOrder): TradeOffPoint[] {
  const { aircraft, settings, problem, offered } = ask;
  const { down, alsoDown = [], emptied = [] } = settings;
  const sound: TradeOffPoint[] = [];
  const onPoint = (point: TradeOffPoint) => {
    const { faults } = recheckArrangement(aircraft, problem, point.arrangement, [down, ...alsoDown], {
      emptied,
      waysIn: true,
    });
    if (faults.length > 0 || point.arrangement.moves >= offered.moves) return;
    sound.push(point);
    order.onPoint(point);
  };
  const last = { asked: offered.moves, arrangement: offered, proved: false };
  order.onPoint(last);
  ballastForMoves(problem, { ...order, onPoint });
  return [...sound, last];
}
