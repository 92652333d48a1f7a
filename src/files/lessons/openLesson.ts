import { lintLesson } from '../../model/lessons/lint/lintLesson';
import { parseLesson } from '../../model/lessons/readLesson';
import type { Lesson } from '../../model/lessons/types';
import { sizeFault } from '../../model/reading/fileSize';
import { textOf } from '../../model/reading/fileText';
import type { FilePickers } from '../filePickers';
import { reason } from '../storage';

/** A lesson file as it was opened: sound, or all that is wrong with it in sentences. */
export type LessonFileRead =
  | { readonly ok: true; readonly lesson: Lesson; readonly text: string }
  | { readonly ok: false; readonly fileName: string; readonly sentences: readonly string[] };

/** Lets a person choose a lesson file, on this machine only; null when they thought better of it. */
export async function chooseLesson(pickers: FilePickers): Promise<LessonFileRead | null> {
  const file = await pickers.chooseFile('.json,application/json');
  return file && lessonOf(file);
}

/** Reads what was dropped: one lesson file. */
export async function droppedLesson(files: FileList): Promise<LessonFileRead> {
  const [file] = files;
  if (!file) return refused('What was dropped', 'it is no file.');
  if (files.length > 1)
    return refused('What was dropped', `${files.length} files, and one lesson is opened at a time.`);
  return lessonOf(file);
}

const refused = (fileName: string, ...sentences: readonly string[]): LessonFileRead => ({
  ok: false,
  fileName,
  sentences,
});

async function lessonOf(file: File): Promise<LessonFileRead> {
  const large = sizeFault(file.size);
  if (large) return refused(file.name, large.sentence);
  try {
    const read = textOf(new Uint8Array(await file.arrayBuffer()));
    return read.ok ? lessonIn(read.text, file.name) : refused(file.name, read.fault.sentence);
  } catch (error) {
    return refused(file.name, `It could not be read: ${reason(error)}.`);
  }
}

/** A lesson in its text, if it is a sound file and a good lesson. */
function lessonIn(text: string, fileName: string): LessonFileRead {
  const parsed = parseLesson(text);
  if (!parsed.ok) return refused(fileName, ...parsed.faults.map(({ sentence }) => sentence));
  const faults = lintLesson(parsed.lesson);
  return faults.length > 0
    ? refused(fileName, ...faults.map(({ sentence }) => sentence))
    : { ok: true, lesson: parsed.lesson, text };
}
