import { offAircraft } from '../model/airframe/offAircraft';
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
  /** All that is stored, whatever it is; null where it is no list. Throws where the browser lets nothing be read. */
  const stored = (): readonly unknown[] | null => {
    const value: unknown = JSON.parse(storage.getItem(KEY) ?? '[]');
    return Array.isArray(value) ? value : null;
  };
  const read: KeptShelf['read'] = () => {
    try {
      const things = stored();
      if (!things) return { parts: [], fault: NOT_READ };
      const parts = things.filter(isShelfPart);
      const lost = things.length - parts.length;
      return {
        parts: parts.map(offAircraft),
        fault: lost > 0 ? `${lost} of ${things.length} things cannot be read.` : null,
      };
    } catch {
      return { parts: [], fault: NOT_READ };
    }
  };
  /** Stores what a change makes of all things but those of a name; what cannot be read may be another version's, and stays. */
  const change = (name: string, added: readonly ShelfPart[]): string | null => {
    try {
      const others = asList(stored).filter((thing) => !isShelfPart(thing) || thing.name !== name);
      if (others.length + added.length > MOST_KEPT)
        return `The shelf keeps ${MOST_KEPT} things of your own: take one off first.`;
      storage.setItem(KEY, JSON.stringify([...others, ...added]));
      return null;
    } catch {
      return 'Not kept: this browser lets the page store nothing, or its room is used up.';
    }
  };
  return { read, keep: (part) => change(part.name, [part]), remove: (name) => change(name, []) };
}

/** What is stored as a list; nothing where it is none. */
function asList(stored: () => readonly unknown[] | null): readonly unknown[] {
  try {
    return stored() ?? [];
  } catch (error) {
    // Text that is no list at all is of no use to any version; a store that lets nothing be read is another matter.
    if (error instanceof SyntaxError) return [];
    throw error;
  }
}

const NOT_READ = 'What this browser keeps of your own shelf cannot be read.';
