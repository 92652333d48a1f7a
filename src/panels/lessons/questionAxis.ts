import { type FigureKind, figureText, kindOf, measureOf, type Reading } from '../../model/lessons/figureText';
import type { Question } from '../../model/lessons/types';
import { ownUnit } from '../../model/units';
import { type AxisState, axisToPx } from '../../store/axisStore';
import type { View } from '../../store/viewStore';
import type { AxisOfQuestion } from './LessonAxis';
import { scaleOf } from './scale';

type OnAxis = Pick<Question, 'quantity' | 'as' | 'axis'>;

/** The axis of a question under the stage: in the stage's own scale where it asks for a place along it. */
export function questionAxis(
  { quantity, as, axis }: OnAxis,
  axes: AxisState,
  view: View,
  reading: Reading,
  from: string,
): AxisOfQuestion {
  const kind = kindOf(quantity);
  const isPlace = as === 'value';
  const along = kind === 'station' && view !== 'front' && view !== 'free' ? axes.station : null;
  const across = kind === 'buttline' && view === 'front' ? axes.lateral : null;
  const measure = measureOf({ quantity, as });
  const stage = isPlace ? (along ?? across) : null;
  return {
    ...axis,
    scale: scaleOf(axis, axes.widthPx, stage, kind === 'buttline' && view === 'front' ? -1 : 1),
    isOfCg: quantity.of === 'cgStation' || quantity.of === 'cgButtline',
    onStage: stage && ((value) => axisToPx(stage, value)),
    size: measure ? ownUnit(measure, reading.units).size : 1,
    zero: kind === 'station' && isPlace ? reading.fromMm : 0,
    unit: unitOf(quantity, as, reading, from),
    ends: endsOf(kind, view),
    say: (value) => figureText(value, { quantity, as }, reading),
  };
}

function unitOf(
  quantity: Question['quantity'],
  as: Question['as'],
  { units }: Reading,
  from: string,
): string {
  if (as === 'times') return 'times as much';
  const measure = measureOf({ quantity, as });
  const symbol = measure ? ownUnit(measure, units).symbol : '';
  switch (kindOf(quantity)) {
    case 'station':
      return as === 'value' ? `${symbol} from ${from}` : `${symbol}, aft +`;
    case 'buttline':
      return `${symbol} off the middle, right +`;
    case 'margin':
      return '% MAC';
    case 'inertia':
      return 'kg·m²';
    case 'mass':
    case 'plusMinus':
    case 'volume':
      return symbol;
  }
}

/** Seen from ahead the aircraft's right is to the left. */
function endsOf(kind: FigureKind, view: View): AxisOfQuestion['ends'] {
  switch (kind) {
    case 'station':
      return ['nose', 'tail'];
    case 'buttline':
      return view === 'front' ? ['right wing', 'left wing'] : ['left wing', 'right wing'];
    case 'mass':
    case 'margin':
    case 'inertia':
    case 'plusMinus':
    case 'volume':
      return null;
  }
}
