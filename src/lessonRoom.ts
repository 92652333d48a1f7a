import type { FilePickers } from './files/filePickers';
import { createKeptProgress } from './files/lessons/keptProgress';
import { lessonHere, noteLesson } from './files/lessons/lessonHere';
import { chooseLesson, droppedLesson, type LessonFileRead } from './files/lessons/openLesson';
import { createOwnLessons } from './files/lessons/ownLessons';
import { pageStorage, tabStorage } from './files/storage';
import { builtInLessons } from './lessons';
import { parseLesson } from './model/lessons/readLesson';
import type { LessonActions, LessonOpened, ListedLesson } from './panels/lessonActions';

/** A file of one's own never stands in for a lesson of the bench, whatever its id. */
const ownKey = (id: string): string => `own:${id}`;

/** The lessons as the page has them: fetched with their place, when it is first wanted. */
export function lessonRoom(pickers: FilePickers): LessonActions {
  const progress = createKeptProgress(pageStorage);
  const ownLessons = createOwnLessons(pageStorage);
  const ours = builtInLessons();
  /** Those of this visit, kept or not. */
  const opened = new Map<string, ListedLesson>();
  let fault: string | null = null;
  for (const { id, text } of readOwn()) {
    // Whether it is a good lesson was seen when it was opened.
    const read = parseLesson(text);
    if (read.ok) add(read.lesson);
    else
      fault = `A lesson of your own, “${id}”, is kept but does not read any more: ${read.faults[0]?.sentence}`;
  }

  function readOwn() {
    const read = ownLessons.read();
    fault = read.fault;
    return read.kept;
  }
  function add(lesson: ListedLesson['lesson']): string {
    const key = ownKey(lesson.id);
    opened.set(key, { key, lesson, isOwn: true });
    return key;
  }
  const take = (read: LessonFileRead | null): LessonOpened => {
    if (read === null) return { ok: false, cancelled: true };
    if (!read.ok) return read;
    const { lesson, text } = read;
    const before = opened.get(ownKey(lesson.id))?.lesson;
    const isNew = JSON.stringify(before) !== JSON.stringify(lesson);
    return { ok: true, key: add(lesson), notKept: ownLessons.keep({ id: lesson.id, text }), isNew };
  };

  return {
    list: () => ({ lessons: [...ours, ...opened.values()], fault }),
    readProgress: progress.read,
    keepProgress: progress.keep,
    here: () => lessonHere(tabStorage),
    noteHere: (key) => noteLesson(tabStorage, key),
    openFile: async () => take(await chooseLesson(pickers)),
    openDropped: async (files) => take(await droppedLesson(files)),
    removeOwn: (key) => {
      const listed = opened.get(key);
      opened.delete(key);
      return listed ? ownLessons.remove(listed.lesson.id) : null;
    },
  };
}
