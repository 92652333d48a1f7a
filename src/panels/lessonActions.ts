import type { Lesson } from '../model/lessons/types';
import type { ProgressOfAll } from '../store/lessonProgress';

/** A lesson of the list: one that comes with the bench, or one of the person's own files. */
export interface ListedLesson {
  /** What its progress is kept under: a file of one's own never stands in for a lesson of the bench. */
  readonly key: string;
  readonly lesson: Lesson;
  readonly isOwn: boolean;
}

/** How the opening of a lesson file ended; `cancelled` when the person thought better of it. */
export type LessonOpened =
  | {
      readonly ok: true;
      readonly key: string;
      readonly notKept: string | null;
      /** It is not the lesson that stood under this key, so nothing that was answered there belongs to it. */
      readonly isNew: boolean;
    }
  | { readonly ok: false; readonly cancelled: true }
  | { readonly ok: false; readonly fileName: string; readonly sentences: readonly string[] };

/** What the panels ask of the lessons, handed in by the composition root. */
export interface LessonActions {
  /** All lessons, those of the bench first, and what of one's own could not be read. */
  list(): { readonly lessons: readonly ListedLesson[]; readonly fault: string | null };
  readProgress(): { readonly progress: ProgressOfAll; readonly fault: string | null };
  /** Null when it is kept, else why not. */
  keepProgress(progress: ProgressOfAll): string | null;
  /** The lesson that this tab stood at; empty for the list, null for elsewhere. */
  here(): string | null;
  noteHere(key: string | null): void;
  openFile(): Promise<LessonOpened>;
  openDropped(files: DataTransfer['files']): Promise<LessonOpened>;
  /** Takes a lesson of one's own off the list. Null when it is gone, else why not. */
  removeOwn(key: string): string | null;
}
