import seeSaw from '../demo-data/lessons/see-saw.json';
import { readLesson } from './model/lessons/readLesson';
import type { ListedLesson } from './panels/lessonActions';

/** In the order of their list. */
const files: readonly unknown[] = [seeSaw];

/** The lessons that come with the bench. */
export const builtInLessons = (): readonly ListedLesson[] =>
  files.map((json) => {
    const read = readLesson(json);
    if (!read.ok) throw new Error(`A lesson does not read: ${read.faults[0]?.sentence}`);
    return { key: read.lesson.id, lesson: read.lesson, isOwn: false };
  });
