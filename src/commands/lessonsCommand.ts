import { shownText } from '../model/document/names';
import { lessonAnswer } from '../model/lessons/answer';
import { figureText } from '../model/lessons/figureText';
import { readingFor } from '../model/lessons/fill';
import { type LintedFile, lintLessons } from '../model/lessons/lint/lintLesson';
import type { Lesson } from '../model/lessons/types';
import { faultCount } from '../model/reading/fault';
import { textOf } from '../model/reading/fileText';
import type { Outcome } from './balanceCommand';
import { Refused } from './balanceWish';
import { bytesOf } from './readableBytes';

const HELP = `Reads lessons and says what is wrong with them.

  npm run lessons -- FILE…

Of a sound lesson it prints what the engine answers to its question. The fields
of a lesson are in assets/lesson.schema.json; those in demo-data/lessons are
examples. The exit code is 0; 1 when a lesson has faults; 2 when a file cannot
be read.
`;

/** Lints the lessons that the arguments name, together. Reads those files and does nothing else; never throws. */
export function lessonsCommand(args: readonly string[]): Outcome {
  if (args.length === 0 || args.includes('--help')) return { status: 0, out: HELP, err: '' };
  const option = args.find((arg) => arg.startsWith('-'));
  if (option !== undefined)
    return { status: 2, out: '', err: `There is no option ${shownText(option)}; --help says more.\n` };
  try {
    const linted = lintLessons(args.map((path) => ({ name: path, text: textIn(path) })));
    const bad = linted.some(({ faults }) => faults.length > 0);
    return { status: bad ? 1 : 0, out: linted.map(reported).join(''), err: '' };
  } catch (error) {
    if (error instanceof Refused) return { status: 2, out: '', err: `${error.message}\n` };
    throw error;
  }
}

function textIn(path: string): string {
  const read = textOf(bytesOf(path));
  if (read.ok) return read.text;
  throw new Refused(`${shownText(path)}: ${read.fault.sentence}`);
}

function reported({ name, lesson, faults }: LintedFile): string {
  const path = shownText(name);
  if (lesson && faults.length === 0) return `${path}: sound. ${answerLine(lesson)}\n`;
  const count = faultCount(faults);
  const lines = faults.map(({ sentence }) => `  ${sentence}\n`).join('');
  return `${path} has ${count === 1 ? 'a fault' : `${count} faults`}:\n${lines}`;
}

function answerLine(lesson: Lesson): string {
  const { title, minutes, question } = lesson;
  const found = lessonAnswer(lesson);
  const answer = found ? figureText(found.answer, question, readingFor(lesson, 'metric')) : 'nothing';
  return `“${shownText(title)}”, ${minutes} minutes; the engine answers ${answer}.`;
}
