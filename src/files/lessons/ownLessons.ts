import { isFull, type TextStorage } from '../storage';

const KEY = 'counterpoise.ownLessons';
/** So many lessons of one's own are kept; the browser's store is small. */
const MOST_KEPT = 30;

/** The text of a lesson file that somebody opened, by the id of its lesson. */
export interface KeptLesson {
  readonly id: string;
  readonly text: string;
}

/** Lesson files of one's own, kept in this browser so that a lesson goes on after a reload. */
export interface OwnLessons {
  read(): { readonly kept: readonly KeptLesson[]; readonly fault: string | null };
  /** Keeps one, in place of one with the same id. Null when it is kept, else why not. */
  keep(lesson: KeptLesson): string | null;
  /** Null when it is gone, else why not. */
  remove(id: string): string | null;
}

export function createOwnLessons(storage: TextStorage): OwnLessons {
  const read: OwnLessons['read'] = () => {
    try {
      const stored: unknown = JSON.parse(storage.getItem(KEY) ?? '[]');
      if (Array.isArray(stored) && stored.every(isKept)) return { kept: stored, fault: null };
      return { kept: [], fault: NOT_READ };
    } catch {
      return { kept: [], fault: NOT_READ };
    }
  };
  const write = (lessons: readonly KeptLesson[]): string | null => {
    try {
      storage.setItem(KEY, JSON.stringify(lessons));
      return null;
    } catch (error) {
      return isFull(error) ? FULL : SHUT;
    }
  };
  return {
    read,
    keep: (lesson) => {
      const others = read().kept.filter(({ id }) => id !== lesson.id);
      if (others.length >= MOST_KEPT)
        return `${MOST_KEPT} lessons of your own are kept: take one off the list first. This one is here until the page is left.`;
      return write([...others, lesson]);
    },
    remove: (id) => write(read().kept.filter((lesson) => lesson.id !== id)),
  };
}

const isKept = (value: unknown): value is KeptLesson => {
  const { id, text } = (value ?? {}) as Partial<Record<keyof KeptLesson, unknown>>;
  return typeof id === 'string' && typeof text === 'string';
};

const NOT_READ = 'Lessons of your own that this browser keeps cannot be read; open their files again.';
const FULL = 'This lesson is here until the page is left: the browser has no room to keep it.';
const SHUT = 'This lesson is here until the page is left: the browser lets the page keep nothing.';
