import { itemById } from '../../document/edit';
import { shownText } from '../../document/names';
import { type Fault, type Path, toldFault } from '../../reading/fault';
import { readAircraft } from '../../reading/read';
import { formatNumber } from '../../units';
import { asAsked, lessonAnswer, quantityAt } from '../answer';
import { changed, type LessonBench, startBench } from '../bench';
import { DEFAULT_WITHIN } from '../goals';
import { asItIs } from '../solved';
import { benchAtStep, stepState, wayOf } from '../steps';
import type { Change, Estimator, Lesson, Step } from '../types';

const READING = { units: 'metric', fromMm: 0 } as const;

/** Faults of what is done by hand: each step must be open when it begins, and be done by its own way. */
export function lintSteps(lesson: Lesson, estimator: Estimator): readonly Fault[] {
  const steps = lesson.experiment.flatMap((step, index) => stepFaults(lesson, step, index, estimator));
  return steps.length > 0 ? steps : shownFaults(lesson, estimator);
}

function stepFaults(lesson: Lesson, step: Step, index: number, estimator: Estimator): readonly Fault[] {
  const at: Path = ['experiment', index, 'goal'];
  const { goal } = step;
  const tell = (words: string, expected: string, received: string) =>
    toldFault(lesson, at, words, expected, received);
  if (goal.by === 'reach' && !((goal.least ?? -Infinity) < (goal.most ?? Infinity))) {
    return [tell('expected a least below the most.', 'a range', 'none')];
  }
  const from = benchAtStep(lesson, index, estimator);
  const way = wayOf(lesson, step, estimator);
  if (way.some((change) => change.do === 'solved')) {
    return [tell('the engine finds nothing to put in for “solved”.', 'something found', 'nothing')];
  }
  const byHand = [...way.flatMap((change) => handFaults(lesson, step, change, from, at))];
  if (stepState(lesson, { index, from }, from, READING, estimator).done) {
    byHand.push(tell('it is met already when the step begins.', 'something left to do', 'nothing'));
  }
  const after = changed(from, way);
  const unsound = soundFaults(lesson, after, at);
  if (unsound.length > 0) return [...byHand, ...unsound];
  if (!stepState(lesson, { index, from }, after, READING, estimator).done) {
    byHand.push(tell('its own way does not reach it.', 'a goal that can be reached', 'one that is not'));
  }
  return byHand;
}

/** The bench must take what the step does: the aircraft stays one that could be saved. */
function soundFaults(lesson: Lesson, { aircraft }: LessonBench, at: Path): readonly Fault[] {
  const read = readAircraft(aircraft);
  if (read.ok) return [];
  const [first] = read.faults;
  const words = `after it the aircraft is not sound: ${first?.sentence ?? ''}`;
  return [toldFault(lesson, at, words, 'a sound aircraft', 'a fault')];
}

/** What the hand cannot do: move what is locked, leave its rail, or set a part down between the steps of the grid. */
function handFaults(
  lesson: Lesson,
  { rail, goal }: Step,
  change: Change,
  from: LessonBench,
  at: Path,
): readonly Fault[] {
  if (change.do !== 'place') return [];
  const { aircraft } = from;
  const item = itemById(aircraft, change.itemId);
  if (!item) return [];
  const tell = (words: string, expected: string, received: string) =>
    toldFault(lesson, at, words, expected, received);
  const name = shownText(item.name);
  if (item.locked) return [tell(`“${name}” is locked and cannot be moved.`, 'a thing that moves', 'locked')];
  const wanted = {
    station: change.stationMm,
    buttline: change.buttlineMm,
    waterline: change.waterlineMm,
  };
  const faults: Fault[] = [];
  const within = goal.by === 'change' ? (goal.within ?? DEFAULT_WITHIN.place) : Infinity;
  for (const [index, axis] of (['station', 'buttline', 'waterline'] as const).entries()) {
    const to = wanted[axis];
    if (to === undefined) continue;
    if (rail !== undefined && rail !== axis && to !== item.positionMm[index]) {
      const words = `the rail runs along the ${rail}, and “${name}” has to change its ${axis}.`;
      faults.push(tell(words, `the rail "${axis}"`, `"${rail}"`));
    }
    const off = Math.abs(to - Math.round(to / aircraft.gridMm) * aircraft.gridMm);
    if (off > within) {
      const words = `the grid of ${aircraft.gridMm} mm steps past ${formatNumber(to, 1)} mm by ${formatNumber(off, 1)} mm; expected at most ${within} mm.`;
      faults.push(tell(words, 'a place on the grid', `${to} mm`));
    }
  }
  return faults;
}

/** The figure that was predicted must be seen: after one of the steps the bench has to show it. */
function shownFaults(lesson: Lesson, estimator: Estimator): readonly Fault[] {
  const found = lessonAnswer(lesson, estimator);
  if (!found) return [];
  const { quantity, as } = lesson.question;
  const figureOf = (bench: LessonBench) =>
    quantity.of === 'partFor' ? asItIs(bench, quantity) : quantityAt(bench, quantity, estimator);
  const first = figureOf(startBench(lesson));
  const seen = lesson.experiment.some((_, index) => {
    const figure = figureOf(benchAtStep(lesson, index + 1, estimator));
    if (figure === null || first === null) return false;
    return Math.abs(asAsked(as, figure, first) - found.answer) <= 1e-6 * Math.max(1, Math.abs(found.answer));
  });
  if (seen) return [];
  const words = 'no step shows what was predicted; expected one after which the bench has the answer.';
  return [toldFault(lesson, ['experiment'], words, 'a step that shows the answer', 'none')];
}
