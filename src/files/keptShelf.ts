import type { ShelfPart } from '../model/airframe/shelf';
import { isShelfPart } from '../model/reading/shelfPart';
import type { TextStorage } from './storage';

const KEY = 'counterpoise.shelf';
/** So many things of a person's own are kept; the browser's store is small. */
const MOST_KEPT = 200;

/** A person's own things on the shelf, kept in this browser alone, beside any aircraft. */
export interface KeptShelf {
  /** All that is kept, and what of it could not be read, in a sentence. */
  read(): { readonly parts: readonly ShelfPart[]; readonly fault: string | null };
  /** Puts a thing on the shelf, in place of one of the same name. Null when it is kept, else why not. */
  keep(part: ShelfPart): string | null;
  /** Takes a thing off by its name. Null when it is gone, else why not. */
  remove(name: string): string | null;
}

export function createKeptShelf(storage: TextStorage): KeptShelf {
  const read: KeptShelf['read'] = () => {
    try {
      const stored: unknown = JSON.parse(storage.getItem(KEY) ?? '[]');
      if (!Array.isArray(stored)) return { parts: [], fault: NOT_READ };
      const parts = stored.filter(isShelfPart);
      const lost = stored.length - parts.length;
      return { parts, fault: lost > 0 ? `${lost} of ${stored.length} things cannot be read.` : null };
    } catch {
      return { parts: [], fault: NOT_READ };
    }
  };
  const write = (parts: readonly ShelfPart[]): string | null => {
    try {
      storage.setItem(KEY, JSON.stringify(parts));
      return null;
    } catch {
      return 'Not kept: this browser lets the page store nothing, or its room is used up.';
    }
  };
  return {
    read,
    keep: (part) => {
      const others = read().parts.filter(({ name }) => name !== part.name);
      if (others.length >= MOST_KEPT)
        return `The shelf keeps ${MOST_KEPT} things of your own: take one off first.`;
      return write([...others, part]);
    },
    remove: (name) => write(read().parts.filter((part) => part.name !== name)),
  };
}

const NOT_READ = 'What this browser keeps of your own shelf cannot be read.';
