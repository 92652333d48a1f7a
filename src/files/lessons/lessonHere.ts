import type { TextStorage } from '../storage';

/** Of the tab alone: which lesson is open in it; empty for the list of lessons. */
const KEY = 'counterpoise.lessonHere';

/** The lesson that a tab stood at when it was loaded again, empty for their list; null when it stood elsewhere. */
export function lessonHere(tab: TextStorage): string | null {
  try {
    return tab.getItem(KEY);
  } catch {
    return null;
  }
}

/** Notes where a tab stands, for when it is loaded again; null for elsewhere. */
export function noteLesson(tab: TextStorage, id: string | null): void {
  try {
    if (id === null) tab.removeItem(KEY);
    else tab.setItem(KEY, id);
  } catch {
    // The next start then begins at the bench.
  }
}
