import type { Aircraft } from '../model/document/types';
import { writeAircraft } from '../model/document/write';
import { type Fault, parseAircraft } from '../model/reading/read';
import { isFull, reason, type TextStorage } from './storage';

export type SaveResult = { readonly ok: true } | { readonly ok: false; readonly sentence: string };

export type RestoreResult =
  /** `damaged` is the latest copy where that one did not read, and the one before it came back. */
  | { readonly kind: 'restored'; readonly aircraft: Aircraft; readonly damaged: DamagedCopy | null }
  | { readonly kind: 'nothing' }
  /** No copy reads. They are left where they are; this is the latest. */
  | ({ readonly kind: 'damaged' } & DamagedCopy)
  | { readonly kind: 'unavailable'; readonly sentence: string };

export interface DamagedCopy {
  readonly faults: readonly Fault[];
  readonly text: string;
}

export interface Autosave {
  save(aircraft: Aircraft): SaveResult;
  restore(): RestoreResult;
  /** The text that was kept last; null when there is none or it is out of reach. */
  latest(): string | null;
  /** Gives the room back: to be called when the aircraft is kept elsewhere. */
  clear(): void;
  /** Whether the browser would keep a text as long as an aircraft's; a sentence when it would not. */
  probe(aircraft: Aircraft): SaveResult;
}

const PREFIX = 'counterpoise.autosave';
const PROBE = `${PREFIX}.probe`;
const SLOT = /^counterpoise\.autosave\.(?:([0-9a-z]+)\.)?[ab]$/;

/** The place of the one aircraft that was kept before there was a fleet: its slots carry no name. */
export const FIRST_PLACE = 'first';

/** Every place of the fleet that something is kept of in slots. */
export const placesInSlots = (storage: TextStorage): readonly string[] => [
  ...new Set(
    storage.keys().flatMap((key) => {
      const slot = SLOT.exec(key);
      return slot ? [slot[1] ?? FIRST_PLACE] : [];
    }),
  ),
];

/** Whether a change of the browser's store, made by another tab, is of an aircraft's slots. */
export const isSlotOf = (key: string | null, fleetId: string): boolean =>
  key?.startsWith(`${prefixOf(fleetId)}.`) ?? false;

const prefixOf = (fleetId: string) => (fleetId === FIRST_PLACE ? PREFIX : `${PREFIX}.${fleetId}`);

/**
 * Keeps one aircraft of the fleet in the browser, in two slots written in turn: the copy that was last written whole is
 * never the one being overwritten, so a full or failing store cannot cost it. Slots and marker are plain
 * text; `restore` reads them as it would any file.
 */
export function createAutosave(storage: TextStorage, fleetId = FIRST_PLACE): Autosave {
  const prefix = prefixOf(fleetId);
  const SLOTS = [`${prefix}.a`, `${prefix}.b`] as const;
  const LATEST = `${prefix}.latest`;
  const latest = (): string => (storage.getItem(LATEST) === SLOTS[1] ? SLOTS[1] : SLOTS[0]);
  /** What this page wrote itself need not be read again to know that it reads. */
  let written: string | null = null;
  const readable = (text: string | null) => text !== null && (text === written || parseAircraft(text).ok);
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
        written = text;
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
        if (first?.ok) return { kind: 'restored', aircraft: first.aircraft, damaged: null };
        if (second?.ok) {
          const damaged = first ? { faults: first.faults, text: copies[0] ?? '' } : null;
          return { kind: 'restored', aircraft: second.aircraft, damaged };
        }
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

    latest() {
      try {
        return storage.getItem(latest());
      } catch {
        return null;
      }
    },

    clear() {
      try {
        for (const key of [...SLOTS, LATEST]) storage.removeItem(key);
        written = null;
      } catch {
        // What cannot be given back stays; it is read again at the next start.
      }
    },

    probe(aircraft) {
      try {
        const text = writeAircraft(aircraft);
        storage.setItem(PROBE, text);
        storage.removeItem(PROBE);
        return { ok: true };
      } catch (error) {
        return {
          ok: false,
          sentence: `${whyNot(error)} What is changed here is gone when the page closes, unless it is saved as a file.`,
        };
      }
    },
  };
}

const saveSentence = (error: unknown) =>
  isFull(error)
    ? 'The browser has no room left to keep this aircraft; the last copy is safe. Save it as a file.'
    : `The browser could not keep this aircraft (${reason(error)}); the last copy is safe. Save it as a file.`;

const whyNot = (error: unknown) =>
  isFull(error)
    ? 'The browser has no room left to keep this aircraft.'
    : `The browser does not let the bench keep anything (${reason(error)}).`;
