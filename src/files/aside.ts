import type { TextStorage } from './storage';

/** A text that was kept by the browser and must not be lost, though it is not on the bench. */
export interface AsideText {
  readonly id: string;
  /** Why it is not on the bench, in a sentence. */
  readonly why: string;
  readonly text: string;
}

const PREFIX = 'counterpoise.aside.';
const MOST = 9;

const slots = Array.from({ length: MOST }, (_, n) => `${PREFIX}${n + 1}`);

/**
 * Puts a text beside the autosave's own slots, where nothing overwrites it. False when the browser does not let it or
 * nine are there already; the same text is put aside once.
 */
export function putAside(storage: TextStorage, text: string, why: string): boolean {
  try {
    if (listAside(storage).some((aside) => aside.text === text)) return true;
    const free = slots.find((slot) => storage.getItem(slot) === null);
    if (!free) return false;
    storage.setItem(free, JSON.stringify({ why, text }));
    return true;
  } catch {
    return false;
  }
}

/** Everything put aside, oldest first. What does not read as such is given as it stands. */
export function listAside(storage: TextStorage): readonly AsideText[] {
  return slots.flatMap((id) => {
    const kept = storage.getItem(id);
    if (kept === null) return [];
    try {
      const { why, text } = JSON.parse(kept) as { readonly why?: unknown; readonly text?: unknown };
      if (typeof why === 'string' && typeof text === 'string') return [{ id, why, text }];
    } catch {
      // Told below as what it is.
    }
    return [{ id, why: 'A text that was put aside is damaged itself.', text: kept }];
  });
}

export const dropAside = (storage: TextStorage, id: string): void => storage.removeItem(id);
