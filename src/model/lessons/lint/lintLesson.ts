import { cappedFaults, type Fault, fault, shortened } from '../../reading/fault';
import { UNCHECKED } from '../../reading/read';
import { estimateHere } from '../quantity';
import { type LessonRead, parseLesson } from '../readLesson';
import type { Estimator, Lesson } from '../types';
import { lintCautions } from './lintCautions';
import { lintNames } from './lintNames';
import { lintQuestions } from './lintQuestions';
import { lintSteps } from './lintSteps';
import { lintWords } from './lintWords';

/** A lesson's file by its name, as text. */
export interface LessonText {
  readonly name: string;
  readonly text: string;
}

/** What the linter says of one file. */
export interface LintedFile {
  readonly name: string;
  readonly lesson: Lesson | null;
  readonly faults: readonly Fault[];
}

/**
 * Everything that is wrong with a lesson that could be read, each fault as where, what was expected and what came. Names come
 * first: where something is not aboard nothing else can be judged. Never throws.
 */
export function lintLesson(lesson: Lesson, estimator: Estimator = estimateHere): readonly Fault[] {
  try {
    const names = lintNames(lesson);
    const words = lintWords(lesson);
    if (names.length > 0) return cappedFaults([...names, ...words]);
    const questions = lintQuestions(lesson, estimator);
    const steps = lintSteps(lesson, estimator);
    return cappedFaults([...questions, ...steps, ...words, ...lintCautions(lesson, estimator)]);
  } catch (error) {
    const reason = shortened(error instanceof Error ? error.message : String(error));
    return [fault(null, [], UNCHECKED, `one that stops a check (${reason})`)];
  }
}

/** Lints files together: no two may have the same id. */
export function lintLessons(
  files: readonly LessonText[],
  estimator: Estimator = estimateHere,
): readonly LintedFile[] {
  const read = files.map(({ name, text }) => ({ name, read: parseLesson(text) }));
  const firstWith = new Map<string, string>();
  return read.map(({ name, read: each }) => {
    const faults = each.ok ? lintLesson(each.lesson, estimator) : each.faults;
    const twice = each.ok ? idTwice(each, name, firstWith) : [];
    return { name, lesson: each.ok ? each.lesson : null, faults: [...twice, ...faults] };
  });
}

function idTwice(
  { lesson }: Extract<LessonRead, { readonly ok: true }>,
  name: string,
  firstWith: Map<string, string>,
): readonly Fault[] {
  const before = firstWith.get(lesson.id);
  if (before === undefined) {
    firstWith.set(lesson.id, name);
    return [];
  }
  return [fault(lesson, ['id'], `an id of its own: ${shortened(before)} has it`, `"${lesson.id}"`)];
}
