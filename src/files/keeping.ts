import type { Aircraft } from '../model/document/types';
import type { DocumentStore } from '../store/documentStore';
import type { NoticeStore } from '../store/noticeStore';
import { putAside } from './aside';
import type { Autosave } from './autosave';
import type { TextStorage } from './storage';

/** How long nothing must change before the work is kept, and how long it may wait while it keeps changing, ms. */
const REST_MS = 300;
const CEILING_MS = 600;

export interface Keeping {
  /** Keeps what is not kept yet, now. */
  flush(): void;
  /** Whether there are changes that the browser does not keep. */
  unkept(): boolean;
  /** This tab keeps the work from now on; `late` when another tab did, whose copy is then put aside. */
  begin(late: boolean): void;
  /** Another tab keeps the work. */
  pause(): void;
}

/** Keeps the aircraft on the bench in the browser as it changes, never more than a second behind. */
export function createKeeping(
  { api }: DocumentStore,
  autosave: Autosave,
  notice: NoticeStore,
  storage: TextStorage,
): Keeping {
  let kept: Aircraft = api.getState().committed;
  let active = false;
  let anothersCopy = false;
  let resting: ReturnType<typeof setTimeout> | undefined;
  let ceiling: ReturnType<typeof setTimeout> | undefined;
  /** When the oldest change that is not kept came, ms of the clock. */
  let waitingSinceMs: number | null = null;

  const unkept = () => api.getState().committed !== kept;
  const flush = () => {
    clearTimeout(resting);
    clearTimeout(ceiling);
    ceiling = undefined;
    waitingSinceMs = null;
    if (!active || !unkept()) return;
    const { committed } = api.getState();
    if (anothersCopy && !putAnothersAside()) return;
    const result = autosave.save(committed);
    if (result.ok) kept = committed;
    tell(result.ok ? null : result.sentence);
  };
  const tell = (sentence: string | null) =>
    sentence === null
      ? notice.drop('autosave')
      : notice.tell({ about: 'autosave', tone: 'bad', text: sentence });

  const putAnothersAside = () => {
    const text = autosave.latest();
    const safe =
      text === null || putAside(storage, text, 'It was on the bench in another tab when this one took over.');
    if (safe) anothersCopy = false;
    else tell('What another tab kept could not be put aside, so nothing is kept here. Save this as a file.');
    return safe;
  };

  api.subscribe((now, before) => {
    if (now.committed === before.committed) return;
    waitingSinceMs ??= Date.now();
    // A page that is busy calls its timers late; an edit is then the moment to keep the ones before it.
    if (Date.now() - waitingSinceMs >= CEILING_MS) return flush();
    clearTimeout(resting);
    resting = setTimeout(flush, REST_MS);
    ceiling ??= setTimeout(flush, CEILING_MS);
  });

  return {
    flush,
    unkept,
    begin: (late) => {
      active = true;
      anothersCopy ||= late;
      flush();
    },
    pause: () => {
      active = false;
    },
  };
}
