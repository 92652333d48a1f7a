import { type Path, valueAt } from '../../reading/fault';
import { ANSWER_NAMES, HINT_NAMES, PREDICTION_NAMES } from '../fill';
import type { Lesson } from '../types';

/** One text of a lesson: where it stands, what it says, and what its placeholders may be. */
export interface LessonText {
  readonly at: Path;
  readonly text: string;
  readonly may: readonly string[];
}

/** Every text that a person reads, in the order that they are read. */
export function textsOf(lesson: Lesson): readonly LessonText[] {
  const named = (lesson.figures ?? []).map(({ name }) => name);
  const before = [...named, 'before'];
  const after = [...named, ...ANSWER_NAMES];
  const afterGuess = [...after, ...PREDICTION_NAMES];
  const { question: checked } = lesson.check;
  const ofCheck = checked.by === 'marker' ? [...ANSWER_NAMES, ...PREDICTION_NAMES] : [...ANSWER_NAMES];
  const rows: readonly (readonly [Path, readonly string[]])[] = [
    [['title'], []],
    [['about'], []],
    [['question', 'ask'], before],
    ...lesson.experiment.flatMap(({ hints }, index): (readonly [Path, readonly string[]])[] => [
      [['experiment', index, 'do'], before],
      ...Object.keys(hints ?? {}).map((key) => [['experiment', index, 'hints', key], hintMay(key)] as const),
      [['experiment', index, 'after'], after],
    ]),
    ...(['right', 'tooLittle', 'tooMuch', 'wrongWay'] as const).map(
      (key) => [['outcome', key], afterGuess] as const,
    ),
    [['outcome', 'why'], after],
    [['sum', 'intro'], after],
    [['sum', 'closing'], after],
    [['check', 'question', 'ask'], named],
    ...(checked.by === 'choice'
      ? checked.options.map((_, index) => [['check', 'question', 'options', index, 'say'], named] as const)
      : []),
    [
      ['check', 'right'],
      [...named, ...ofCheck],
    ],
    [
      ['check', 'wrong'],
      [...named, ...ofCheck],
    ],
    [['closing'], after],
  ];
  return rows.flatMap(([at, may]) => {
    const text = valueAt(lesson, at);
    return typeof text === 'string' ? [{ at, text, may }] : [];
  });
}

const hintMay = (key: string) => (key === 'other' ? ['item'] : HINT_NAMES);
