import type { Aircraft } from '../model/document/types';
import { writeAircraft } from '../model/document/write';
import type { DocumentState, DocumentStore } from '../store/documentStore';
import { newFleetId } from '../store/fleetId';
import type { NoticeStore } from '../store/noticeStore';
import type { Autosave } from './autosave';

/** How long nothing must change before the work is kept, and how long it may wait while it keeps changing, ms. */
const REST_MS = 300;
const CEILING_MS = 600;

export interface Keeping {
  /** Keeps what is not kept yet, now. */
  flush(): void;
  /** Whether there are changes that the browser does not keep. */
  unkept(): boolean;
  /** Whether this tab is the one that keeps what is on its bench. */
  keeps(): boolean;
  /** This tab keeps the aircraft from now on; `late` when another tab did, whose state it then goes on from. */
  begin(late: boolean): void;
  /** Another tab keeps the aircraft: it is followed, and what is changed here becomes an aircraft of its own. */
  wait(): void;
  /** The other tab has kept another state. */
  followed(): void;
}

interface KeepingParts {
  readonly document: DocumentStore;
  readonly notice: NoticeStore;
  /** The slots of an aircraft by its place in the fleet. */
  autosaveOf(fleetId: string): Autosave;
}

const COPIES = {
  followed: 'is open in another tab, which keeps it. What you changed here is a copy of its own in the fleet',
  meanwhile:
    'was changed in another tab meanwhile. What you came back to is a copy of its own in the fleet, beside it',
} as const;

/** Keeps the aircraft on the bench in the browser as it changes, never more than a second behind. */
export function createKeeping({ document, notice, autosaveOf }: KeepingParts): Keeping {
  const { api } = document;
  const now = api.getState;
  /** What the slots hold of what is on the bench; null for what came from elsewhere and is still to be kept. */
  let kept: Aircraft | null = now().committed;
  let role: 'asking' | 'keeps' | 'waits' = 'asking';
  /** What came onto the bench, while it is not known yet who keeps it. */
  let arrived = now().committed;
  let following = false;
  let resting: ReturnType<typeof setTimeout> | undefined;
  let ceiling: ReturnType<typeof setTimeout> | undefined;
  /** When the oldest change that is not kept came, ms of the clock. */
  let waitingSinceMs: number | null = null;
  /** What this tab last wrote for each aircraft: anything else in its slots is another tab's. */
  const written = new Map<string, string>();

  const unkept = () => role !== 'waits' && now().committed !== kept;
  const save = ({ committed, fleetId }: DocumentState) => {
    const autosave = autosaveOf(fleetId);
    const result = autosave.save(committed);
    if (result.ok) written.set(fleetId, autosave.latest() ?? '');
    tell(result.ok ? null : result.sentence);
    return result.ok;
  };
  const rest = () => {
    clearTimeout(resting);
    clearTimeout(ceiling);
    ceiling = undefined;
    waitingSinceMs = null;
  };
  const flush = () => {
    rest();
    const state = now();
    if (role === 'keeps' && state.committed !== kept && save(state)) kept = state.committed;
  };
  const tell = (sentence: string | null) =>
    sentence === null
      ? notice.drop('autosave')
      : notice.tell({ about: 'autosave', tone: 'bad', text: sentence });

  /** Gives what is on the bench a place of its own, so that another tab's work is not written over. */
  const partWays = (why: keyof typeof COPIES) => {
    const text = `${now().committed.name} ${COPIES[why]}.`;
    role = 'asking';
    document.moveTo(newFleetId());
    notice.tell({ about: 'copy', tone: 'note', text });
  };
  const follow = () => {
    const restored = autosaveOf(now().fleetId).restore();
    if (restored.kind !== 'restored') return;
    if (writeAircraft(restored.aircraft) === writeAircraft(now().committed)) return;
    following = true;
    document.follow(restored.aircraft);
    following = false;
    kept = restored.aircraft;
    arrived = restored.aircraft;
  };

  api.subscribe((state, before) => {
    if (state.fleetId !== before.fleetId) {
      if (role === 'keeps' && before.committed !== kept) save(before);
      rest();
      kept = null;
      role = 'asking';
      arrived = state.committed;
      return;
    }
    if (state.committed === before.committed || following) return;
    if (role === 'waits') return partWays('followed');
    waitingSinceMs ??= Date.now();
    // A page that is busy calls its timers late; an edit is then the moment to keep the ones before it.
    if (Date.now() - waitingSinceMs >= CEILING_MS) return flush();
    clearTimeout(resting);
    resting = setTimeout(flush, REST_MS);
    ceiling ??= setTimeout(flush, CEILING_MS);
  });

  const changedHere = () => now().committed !== (kept ?? arrived);
  /** Whether the slots hold something that this tab neither wrote nor shows. */
  const anothersWork = () => {
    const { fleetId, committed } = now();
    const text = autosaveOf(fleetId).latest();
    return text !== null && text !== written.get(fleetId) && text !== writeAircraft(committed);
  };

  return {
    flush,
    unkept,
    keeps: () => role === 'keeps',
    begin: (late) => {
      role = 'keeps';
      if (late && !changedHere()) follow();
      else if ((late || kept === null) && anothersWork()) return partWays('meanwhile');
      flush();
    },
    wait: () => {
      role = 'waits';
      if (changedHere()) return partWays('followed');
      follow();
    },
    followed: () => {
      if (role === 'waits') follow();
    },
  };
}
