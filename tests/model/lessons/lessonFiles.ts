import { readdirSync, readFileSync } from 'node:fs';
import { readLesson } from '../../../src/model/lessons/readLesson';
import type { Lesson } from '../../../src/model/lessons/types';

const folder = new URL('../../../demo-data/lessons/', import.meta.url);

/** The names of the lessons that come with the bench, without ".json". */
export const lessonNames: readonly string[] = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => file.replace('.json', ''));

export const lessonText = (name: string): string => readFileSync(new URL(`${name}.json`, folder), 'utf8');

/** The same, parsed afresh, to be broken by a test. */
// biome-ignore lint/suspicious/noExplicitAny: tests put wrong things in wrong places.
export const lessonJson = (name: string): any => JSON.parse(lessonText(name));

/** Reads a lesson that must be sound. */
export function soundLesson(json: unknown): Lesson {
  const read = readLesson(json);
  if (!read.ok) throw new Error(read.faults.map(({ sentence }) => sentence).join('\n'));
  return read.lesson;
}

export const lessonNamed = (name: string): Lesson => soundLesson(lessonJson(name));
