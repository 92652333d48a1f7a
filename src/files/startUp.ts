import type { Aircraft } from '../model/document/types';
import { parseAircraft } from '../model/reading/read';
import type { Bench } from '../store/bench';
import { dropAside, listAside, putAside } from './aside';
import { type Autosave, type DamagedCopy, FIRST_PLACE, placesInSlots } from './autosave';
import type { FilePickers } from './filePickers';
import type { TextStorage } from './storage';

/** Which aircraft of the fleet a tab has on its bench: of that tab, and of the tab that chose last. */
const HERE = 'counterpoise.here';

/**
 * The place in the fleet of what a tab begins with: what it had itself, else what was chosen last in any tab, else what
 * was kept before there was a fleet; null at the first visit.
 */
export function placeAtStart(storage: TextStorage, tab: TextStorage): string | null {
  const of = (from: TextStorage) => {
    try {
      return from.getItem(HERE);
    } catch {
      return null;
    }
  };
  try {
    const [mine, last] = [of(tab), of(storage)];
    return mine ?? last ?? (placesInSlots(storage).includes(FIRST_PLACE) ? FIRST_PLACE : null);
  } catch {
    return null;
  }
}

/** Notes what is on a tab's bench, for its next start. */
export function noteHere(storages: readonly TextStorage[], fleetId: string): void {
  for (const storage of storages)
    try {
      if (storage.getItem(HERE) !== fleetId) storage.setItem(HERE, fleetId);
    } catch {
      // The next start then begins with what it knows.
    }
}

/** Of the tab alone: set while an aircraft is being put on the bench for the first time. */
const OPENING = 'counterpoise.opening';

export interface StartUp {
  /** What the browser kept; null when it kept nothing that can be put on the bench. */
  readonly aircraft: Aircraft | null;
  /** The last opening in this tab never came to its end, so what was kept stays off the bench until it is asked for. */
  readonly stopped: boolean;
  /** False when a text that does not read could not be put aside, so that keeping anything would overwrite it. */
  readonly mayKeep: boolean;
}

/** Reads what the browser kept. What does not read, or stopped the bench, is put aside before anything overwrites it. */
export function startUp(autosave: Autosave, storage: TextStorage, tab: TextStorage): StartUp {
  const stopped = marked(tab);
  const restored = autosave.restore();
  switch (restored.kind) {
    case 'nothing':
    case 'unavailable':
      return { aircraft: null, stopped: false, mayKeep: true };
    case 'damaged':
      return {
        aircraft: null,
        stopped: false,
        mayKeep: putAside(
          storage,
          restored.text,
          `What the browser kept could not be read: ${why(restored)}`,
        ),
      };
    case 'restored': {
      const { aircraft, damaged } = restored;
      const sentence =
        damaged && `The copy kept last could not be read, so the one before it is here: ${why(damaged)}`;
      const safe = !damaged || putAside(storage, damaged.text, sentence ?? '');
      if (!stopped) return { aircraft, stopped, mayKeep: safe };
      const text = autosave.latest() ?? '';
      const aside = putAside(
        storage,
        text,
        `The bench stopped while it opened ${aircraft.name}, so the bench is empty.`,
      );
      return { aircraft: null, stopped, mayKeep: safe && aside };
    }
  }
}

const why = ({ faults: [first, ...more] }: DamagedCopy): string =>
  `${first?.sentence ?? 'it is empty.'}${more.length > 0 ? ` (and ${more.length} more)` : ''}`;

/** Whether the last opening in this tab never ended; from now on this one has not. */
function marked(tab: TextStorage): boolean {
  try {
    const was = tab.getItem(OPENING) !== null;
    tab.setItem(OPENING, 'yes');
    return was;
  } catch {
    return false;
  }
}

/** The aircraft stands on the bench and the page can be used. */
export function opened(tab: TextStorage): void {
  try {
    tab.removeItem(OPENING);
  } catch {
    // A tab that stores nothing was not marked either.
  }
}

/** Tells of every text that was put aside, with the ways to have it. */
export function tellAside({ notice, document }: Bench, storage: TextStorage, pickers: FilePickers): void {
  const texts = () => {
    try {
      return listAside(storage);
    } catch {
      return [];
    }
  };
  for (const { id, why: reason, text } of texts()) {
    const read = parseAircraft(text);
    const open = () => read.ok && document.replace(read.aircraft, 'Open the copy put aside');
    notice.tell({
      about: id,
      tone: 'bad',
      text: `${reason} Its text is put aside.`,
      actions: [
        ...(read.ok ? [{ label: 'Open it', run: open }] : []),
        { label: 'Save it as a file', run: () => pickers.download('kept-copy.json', text) },
        {
          label: 'Discard it',
          run: () => {
            dropAside(storage, id);
            notice.drop(id);
          },
        },
      ],
    });
  }
}
