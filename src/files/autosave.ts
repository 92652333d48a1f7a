import type { Aircraft } from '../model/document/types';
import { writeAircraft } from '../model/document/write';
import { type Fault, parseAircraft } from '../model/reading/read';
import type { TextStorage } from './storage';

export type SaveResult = { readonly ok: true } | { readonly ok: false; readonly sentence: string };

export type RestoreResult =
  /** `older`: the latest copy was damaged and the one before it came back. */
  | { readonly kind: 'restored'; readonly aircraft: Aircraft; readonly older: boolean }
  | { readonly kind: 'nothing' }
  /** Both copies are damaged. They are left where they are; `text` is the latest, for saving to a file. */
  | { readonly kind: 'damaged'; readonly faults: readonly Fault[]; readonly text: string }
  | { readonly kind: 'unavailable'; readonly sentence: string };

export interface Autosave {
  save(aircraft: Aircraft): SaveResult;
  restore(): RestoreResult;
}

const SLOTS = ['counterpoise.autosave.a', 'counterpoise.autosave.b'] as const;
const LATEST = 'counterpoise.autosave.latest';

/**
 * Keeps the aircraft in the browser, in two slots written in turn: the copy that was last written whole is
 * never the one being overwritten, so a full or failing store cannot cost it. Slots and marker are plain
 * text; `restore` reads them as it would any file.
 */
export function createAutosave(storage: TextStorage): Autosave {
  const latest = (): string => (storage.getItem(LATEST) === SLOTS[1] ? SLOTS[1] : SLOTS[0]);
  const other = (slot: string): string => (slot === SLOTS[0] ? SLOTS[1] : SLOTS[0]);

  return {
    save(aircraft) {
      try {
        const text = writeAircraft(aircraft);
        const before = latest();
        if (storage.getItem(before) === text) return { ok: true };
        const slot = readable(storage.getItem(before)) ? other(before) : before;
        storage.setItem(slot, text);
        if (storage.getItem(slot) !== text) throw new Error('It did not read back as it was written.');
        storage.setItem(LATEST, slot);
        return { ok: true };
      } catch (error) {
        return { ok: false, sentence: saveSentence(error) };
      }
    },

    restore() {
      try {
        const slot = latest();
        const copies = [storage.getItem(slot), storage.getItem(other(slot))];
        const [first, second] = copies.map((text) => (text === null ? null : parseAircraft(text)));
        if (first?.ok) return { kind: 'restored', aircraft: first.aircraft, older: false };
        if (second?.ok) return { kind: 'restored', aircraft: second.aircraft, older: first != null };
        const bad = first ?? second;
        if (!bad || bad.ok) return { kind: 'nothing' };
        return { kind: 'damaged', faults: bad.faults, text: copies[0] ?? copies[1] ?? '' };
      } catch (error) {
        return {
          kind: 'unavailable',
          sentence: `The browser does not let the bench read its store (${reason(error)}).`,
        };
      }
    },
  };
}

const readable = (text: string | null) => text !== null && parseAircraft(text).ok;

function saveSentence(error: unknown): string {
  const full = error instanceof Error && /quota/i.test(`${error.name} ${error.message}`);
  return full
    ? 'The browser has no room left to keep this aircraft; the last copy is safe. Save it as a file.'
    : `The browser could not keep this aircraft (${reason(error)}); the last copy is safe. Save it as a file.`;
}

const reason = (error: unknown) =>
  error instanceof Error ? error.message.replace(/\.$/, '') : String(error);
