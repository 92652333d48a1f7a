import { type LessonProgress, type ProgressOfAll, STAGES } from '../../store/lessonProgress';
import type { TextStorage } from '../storage';

const KEY = 'counterpoise.lessons';

/** What was kept, and what of it could not be read, in a sentence. */
export interface ProgressRead {
  readonly progress: ProgressOfAll;
  readonly fault: string | null;
}

/** How far a person has come in each lesson, kept in this browser. */
export interface KeptProgress {
  read(): ProgressRead;
  /** Null when it is kept, else why not. */
  keep(progress: ProgressOfAll): string | null;
}

export function createKeptProgress(storage: TextStorage): KeptProgress {
  return {
    read: () => {
      let text: string | null;
      try {
        text = storage.getItem(KEY);
      } catch {
        return { progress: {}, fault: SHUT };
      }
      try {
        return sorted(JSON.parse(text ?? '{}'));
      } catch {
        return { progress: {}, fault: NOT_READ };
      }
    },
    keep: (progress) => {
      try {
        storage.setItem(KEY, JSON.stringify(progress));
        return null;
      } catch {
        return NOT_KEPT;
      }
    },
  };
}

function sorted(stored: unknown): ProgressRead {
  if (typeof stored !== 'object' || stored === null || Array.isArray(stored))
    return { progress: {}, fault: NOT_READ };
  const all = Object.entries(stored);
  const sound = all.filter((entry): entry is [string, LessonProgress] => isProgress(entry[1]));
  const lost = all.length - sound.length;
  return {
    progress: Object.fromEntries(sound),
    fault:
      lost > 0
        ? `What this browser keeps of ${lost} of ${all.length} lessons cannot be read; they begin anew.`
        : null,
  };
}

const isFigure = (value: unknown) => value === null || (typeof value === 'number' && Number.isFinite(value));

function isProgress(stored: unknown): stored is LessonProgress {
  if (typeof stored !== 'object' || stored === null) return false;
  const { stage, guess, steps, checkGuess, done } = stored as Record<string, unknown>;
  return (
    (STAGES as readonly unknown[]).includes(stage) &&
    isFigure(guess) &&
    // Nothing is shown before it was predicted.
    (stage === 'asked' || guess !== null) &&
    Number.isInteger(steps) &&
    (steps as number) >= 0 &&
    isFigure(checkGuess) &&
    typeof done === 'boolean'
  );
}

const SHUT =
  'This browser lets the page keep nothing, so how far you came in the lessons is lost when the page is left.';
const NOT_READ = 'What this browser keeps of your lessons cannot be read; they begin anew.';
const NOT_KEPT =
  'How far you came in the lessons is not kept: this browser lets the page store nothing, or its room is used up.';
