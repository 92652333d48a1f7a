import type { ArrangeOrder } from '../../engine/place/arrange';
import { ballastForMargin, ballastForMoves, type TradeOffPoint } from '../../engine/place/tradeOff';
import { recheckArrangement } from './applyArrangement';
import type { ChoicesAsk } from './tasks';

/** The order of a search with what is told of each point. */
export interface ChoicesOrder extends Omit<ArrangeOrder, 'onProgress'> {
  readonly onPoint: (point: TradeOffPoint) => void;
}

/** Ballast against margin, only of what the balance and the fit say can be built; told point by point. */
export const choicesForMargin = (ask: ChoicesAsk, points: number, order: ChoicesOrder): TradeOffPoint[] =>
  onlySound(ask, order, (sound) => ballastForMargin(ask.problem, points, sound));

/** Ballast against moves, likewise. */
export const choicesForMoves = (ask: ChoicesAsk, order: ChoicesOrder): TradeOffPoint[] =>
  onlySound(ask, order, (sound) => ballastForMoves(ask.problem, sound));

function onlySound(
  { aircraft, settings, problem }: ChoicesAsk,
  order: ChoicesOrder,
  search: (order: ChoicesOrder) => TradeOffPoint[],
): TradeOffPoint[] {
  const { down, alsoDown = [], emptied = [] } = settings;
  const sound: TradeOffPoint[] = [];
  const onPoint = (point: TradeOffPoint) => {
    const options = { emptied, waysIn: true };
    const { faults } = recheckArrangement(aircraft, problem, point.arrangement, [down, ...alsoDown], options);
    if (faults.length > 0) return;
    sound.push(point);
    order.onPoint(point);
  };
  search({ ...order, onPoint });
  return sound;
}
