import { type Fault, type Path, toldFault } from '../../reading/fault';
import { formatNumber } from '../../units';
import { type Answer, answerOf } from '../answer';
import { checkBench, type LessonBench, startBench } from '../bench';
import { kindOf } from '../figureText';
import { placeholdersIn } from '../fill';
import { rightOptions } from '../outcome';
import type { Asked, ChoiceQuestion, Estimator, Lesson, Question } from '../types';
import { textsOf } from './texts';

/** Faults of the two questions: the engine must have an answer, and the marker must be able to be right and to be wrong. */
export function lintQuestions(lesson: Lesson, estimator: Estimator): readonly Fault[] {
  const { question, check } = lesson;
  const bench = startBench(lesson);
  const second = checkBench(lesson);
  const at = ['check', 'question'];
  return [
    ...markerFaults(lesson, bench, question, ['question'], estimator),
    ...givenAway(lesson, answerOf(bench, question, estimator)),
    ...(check.question.by === 'marker'
      ? markerFaults(lesson, second, check.question, at, estimator)
      : choiceFaults(lesson, second, check.question, at, estimator)),
    ...sameCaseFaults(lesson),
    ...(lesson.figures ?? []).flatMap((figure, index) =>
      answerOf(bench, figure, estimator) ? [] : [noAnswer(lesson, ['figures', index])],
    ),
  ];
}

const shown = (figure: number) => formatNumber(figure, Math.abs(figure) < 1 ? 4 : 1);

const noAnswer = (lesson: Lesson, at: Path) =>
  toldFault(lesson, at, 'the engine finds no such figure.', 'a figure of the bench', 'none');

function markerFaults(
  lesson: Lesson,
  bench: LessonBench,
  question: Question,
  at: Path,
  estimator: Estimator,
): readonly Fault[] {
  const axisFaults = faultsOfAxis(lesson, question.axis, [...at, 'axis']);
  const found = answerOf(bench, question, estimator);
  if (!found) return [...axisFaults, noAnswer(lesson, at)];
  return axisFaults.length > 0 ? axisFaults : answerFaults(lesson, question, found, at);
}

function faultsOfAxis(
  lesson: Lesson,
  { least, most, start, step, within }: Question['axis'],
  at: Path,
): readonly Fault[] {
  const tell = (key: string, expected: string, came: number) =>
    toldFault(lesson, [...at, key], `expected ${expected}, got ${came}.`, expected, String(came));
  if (!(least < most)) return [tell('most', `more than the least, ${least}`, most)];
  const faults: Fault[] = [];
  if (start < least || start > most)
    faults.push(tell('start', `a place on the axis, ${least} to ${most}`, start));
  if (step > within) faults.push(tell('step', `a step no longer than the tolerance, ${within}`, step));
  const widest = (most - least) / 4;
  if (within > widest) faults.push(tell('within', `at most a quarter of the axis, ${widest}`, within));
  return faults;
}

function answerFaults(
  lesson: Lesson,
  { axis, changesNothing = false, quantity }: Question,
  { before, answer }: Answer,
  at: Path,
): readonly Fault[] {
  const tell = (key: string, words: string, expected: string) =>
    toldFault(lesson, [...at, key], words, expected, shown(answer));
  const { least, most, start, within } = axis;
  if (answer < least || answer > most) {
    const words = `the answer, ${shown(answer)}, is not on the axis; expected it between ${least} and ${most}.`;
    return [tell('axis', words, `an answer from ${least} to ${most}`)];
  }
  const faults: Fault[] = [];
  if (Math.abs(answer - start) <= within) {
    const words = `the marker starts at ${start}, which is right already (${shown(answer)}, within ${within}).`;
    faults.push(tell('axis', words, 'a start that is wrong'));
  }
  const stays = Math.abs(answer - before) <= within;
  if (stays && !changesNothing) {
    const words = `nothing changes (${shown(before)}, then ${shown(answer)}, within ${within}); expected a change, or "changesNothing": true.`;
    faults.push(tell('change', words, 'a change that can be told'));
  }
  if (!stays && changesNothing) {
    const words = `it says that nothing changes, and ${kindOf(quantity)} goes from ${shown(before)} to ${shown(answer)}.`;
    faults.push(tell('changesNothing', words, 'no change'));
  }
  return faults;
}

/** A text that has the answer in it as a figure: it must be left to the engine. */
function givenAway(lesson: Lesson, found: Answer | null): readonly Fault[] {
  const { question } = lesson;
  const unit = { station: 'mm', buttline: 'mm', plusMinus: 'mm', mass: 'g', volume: 'ml' } as const;
  const kind = kindOf(question.quantity);
  if (!found || kind === 'margin' || kind === 'inertia' || question.as === 'times') return [];
  return textsOf(lesson).flatMap(({ at, text }) =>
    placeholdersIn(text).flatMap((inside) => {
      const [figure, of] = inside.replace(/^station /, '').split(' ');
      const same = of === unit[kind] && Math.abs(Number(figure) - found.answer) <= 0.5;
      const words = `{${inside}} is the answer; expected {answer}, for the engine works it out.`;
      return same && at[0] !== 'check' ? [toldFault(lesson, at, words, '{answer}', `{${inside}}`)] : [];
    }),
  );
}

function choiceFaults(
  lesson: Lesson,
  bench: LessonBench,
  question: ChoiceQuestion,
  at: Path,
  estimator: Estimator,
): readonly Fault[] {
  const found = answerOf(bench, question, estimator);
  if (!found) return [noAnswer(lesson, at)];
  const right = rightOptions(question, found);
  const where = [...at, 'options'];
  const faults: Fault[] = question.options.flatMap(({ least, most }, index) => {
    if (least !== undefined && most !== undefined && !(least < most)) {
      const words = `expected a least below the most, got ${least} and ${most}.`;
      return [toldFault(lesson, [...where, index], words, 'a range', `${least} to ${most}`)];
    }
    if (least !== undefined || most !== undefined) return [];
    const words = 'expected a least or a most: it would be right whatever happens.';
    return [toldFault(lesson, [...where, index], words, 'a least or a most', 'neither')];
  });
  if (right.length !== 1) {
    const came = right.length === 0 ? 'none' : `${right.length} of them`;
    const words = `the engine's figure is ${shown(found.answer)}; expected one option to be right, got ${came}.`;
    faults.push(toldFault(lesson, where, words, 'one right option', came));
  }
  return faults;
}

/** The check must be another case than the lesson's own. */
function sameCaseFaults({ check, question, ...rest }: Lesson): readonly Fault[] {
  const asked = ({ change, quantity, as }: Asked) => JSON.stringify([change, quantity, as]);
  if (check.aircraft || check.begin || asked(check.question) !== asked(question)) return [];
  const words = 'it asks what the lesson asked; expected a new case.';
  return [toldFault({ ...rest, check, question }, ['check', 'question'], words, 'a new case', 'the same')];
}
