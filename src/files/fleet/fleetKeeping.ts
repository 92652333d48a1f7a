import { blankAircraft } from '../../model/document/blank';
import type { Aircraft } from '../../model/document/types';
import { writeAircraft } from '../../model/document/write';
import { MANY_THINGS, thingsChanged } from '../../model/history/largeStep';
import { textDigest } from '../../model/history/textDigest';
import { withPower } from '../../model/judgement/withPower';
import { isLevel } from '../../model/loads/attitude';
import { type Tone, toneOf } from '../../model/words/verdictFacts';
import type { Bench } from '../../store/bench';
import { type DocumentState, historyOf, ownSteps } from '../../store/documentStore';
import type { FleetCard } from '../../store/fleetStore';
import type { Keeping } from '../keeping';
import { cardOf } from './cardOf';
import type { Fleet } from './fleet';
import { packHistory, recallHistory } from './recallHistory';
import { createVisits } from './visits';

/** How long the bench must be at rest before the fleet is written, and how long it may wait, ms. */
const REST_MS = 1200;
const CEILING_MS = 5000;

export interface FleetKeeping {
  /** This tab keeps what is on the bench from now on; `late` when another tab did. */
  arrived(late: boolean): void;
  /** Writes what is not written yet and waits for all that is under way. */
  settle(): Promise<void>;
  /** Reads the cards, and the revisions of what is on the bench, afresh. */
  refresh(): Promise<void>;
  /** Does something with the fleet after all before it, telling what goes wrong; the failure where it did. */
  inTurn<T>(work: () => Promise<T>): Promise<T | Error>;
}

interface FleetKeepingParts {
  readonly bench: Bench;
  readonly fleet: Fleet;
  readonly keeping: Pick<Keeping, 'keeps'>;
  /** The page began with what it comes with: that is kept once something of it is changed. */
  readonly comesAfresh: boolean;
  /** A place is written: slots that hold the same, or less, may give back their room. */
  written(fleetId: string, text: string): void;
  /** The fleet has changed, for other tabs. */
  changed(): void;
  /** The first work that is worth asking the browser to keep it. */
  worthKeeping(): void;
  refused(error: unknown): void;
  went(): void;
}

/** Keeps the fleet in step with the bench: each aircraft in its own place, with its history and its revisions. */
export function createFleetKeeping(parts: FleetKeepingParts): FleetKeeping {
  const { bench, fleet, keeping } = parts;
  const { api } = bench.document;
  const visits = createVisits(fleet);
  let queue: Promise<unknown> = Promise.resolve();
  let pending: DocumentState | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let ceiling: ReturnType<typeof setTimeout> | undefined;
  let judged: { readonly of: DocumentState['committed']; readonly tone: Tone } | null = null;
  const recalled = new Set<number>();
  let lastPut: DocumentState | null = null;
  /** Whether the fleet has its steps too; of what came from there untouched it has. */
  const isWritten = (state: DocumentState) =>
    state.past.length + state.future.length === 0 ||
    (lastPut?.fleetId === state.fleetId && lastPut.past === state.past && lastPut.future === state.future);

  const inTurn = <T>(work: () => Promise<T>): Promise<T | Error> => {
    const turn = queue.then(work).then(
      (done) => {
        parts.went();
        return done;
      },
      (error: unknown) => {
        parts.refused(error);
        return error instanceof Error ? error : new Error(String(error));
      },
    );
    queue = turn;
    return turn;
  };

  const refresh = async () => {
    const { fleetId } = api.getState();
    const [cards, revisions] = [await fleet.cards(), await fleet.revisions(fleetId)];
    bench.fleet.api.setState({ cards, revisions: revisions.map(({ text, ...revision }) => revision) });
  };

  const put = async (state: DocumentState) => {
    const { fleetId, committed } = state;
    const text = writeAircraft(committed);
    if (text === BLANK) return;
    const cards = bench.fleet.get().cards;
    const before = cards.find(({ id }) => id === fleetId);
    const twin = before ? undefined : await unedited(state, text);
    if (twin) {
      bench.document.moveTo(twin.id);
      await refresh();
      // Its first place is given up: in its slots the next start would find it once more.
      return parts.written(fleetId, text);
    }
    const digest = textDigest(text);
    const same = before?.digest === digest;
    const tone = judged?.of === committed ? judged.tone : same ? before.tone : null;
    const changedAtMs = same ? before.changedAtMs : Date.now();
    const card = cardOf(fleetId, committed, text, { tone, changedAtMs });
    // One that was deleted and came back by an undo is wanted again.
    const isDeleted = before !== undefined && before.deletedAtMs !== null;
    if (same && !isDeleted && before.tone === tone && isWritten(state)) return;
    // Left before its steps came back from the fleet, it keeps those that the fleet has.
    const history = recalled.has(state.aircraftNumber)
      ? packHistory(state)
      : ((await fleet.read(fleetId))?.history ?? packHistory(state));
    await visits.put(state, { card, text, history });
    lastPut = state;
    parts.written(fleetId, text);
    if (ownSteps(state).length > 0) parts.worthKeeping();
    await refresh();
    parts.changed();
  };
  /** The same aircraft in the fleet already: what was opened twice is one. */
  const unedited = async (state: DocumentState, text: string): Promise<FleetCard | undefined> => {
    if (ownSteps(state).length > 0 || api.getState() !== state) return;
    const digest = textDigest(text);
    return (await fleet.cards()).find((card) => card.digest === digest && card.deletedAtMs === null);
  };

  const write = () => {
    clearTimeout(timer);
    clearTimeout(ceiling);
    ceiling = undefined;
    const state = pending;
    pending = null;
    const latest = () => {
      const now = api.getState();
      return now.aircraftNumber === state?.aircraftNumber && now.fleetId === state.fleetId ? now : state;
    };
    if (state) void inTurn(() => put(latest() ?? state));
  };
  /** What the page comes with is no work yet. */
  const isFresh = (state: DocumentState) =>
    parts.comesAfresh && state.aircraftNumber === 0 && ownSteps(state).length === 0;
  const wait = () => {
    if (!keeping.keeps() || isFresh(api.getState())) return;
    pending = api.getState();
    clearTimeout(timer);
    timer = setTimeout(write, REST_MS);
    ceiling ??= setTimeout(write, CEILING_MS);
  };
  const recall = async (late: boolean) => {
    const state = api.getState();
    const { fleetId, aircraftNumber, committed } = state;
    const kept = await fleet.read(fleetId);
    visits.arrive(fleetId, kept, late);
    const { past, future } = historyOf(state);
    // Undo brought it back with its steps.
    if (recalled.has(aircraftNumber) && past.length + future.length > 0) return;
    const from = past[0]?.aircraft ?? committed;
    const history = kept?.history ? await recallHistory(kept.history, from) : null;
    if (api.getState().aircraftNumber !== aircraftNumber) return;
    recalled.add(aircraftNumber);
    if (history) bench.document.recall(history);
    else if (kept?.history) bench.notice.tell({ about: 'history', tone: 'note', text: DAMAGED_HISTORY });
  };

  api.subscribe((now, before) => {
    if (now.fleetId !== before.fleetId) return write();
    if (now.committed === before.committed) return;
    if (keeping.keeps() && thingsChanged(before.committed, now.committed) >= MANY_THINGS) {
      const label = now.past.at(-1)?.label;
      if (label && now.past.length > before.past.length)
        void inTurn(() => visits.before(before, `before “${label}”`));
    }
    wait();
  });
  bench.verdict.subscribe(() => {
    const { preview, committed } = api.getState();
    const { attitude } = bench.view.getState();
    if (preview || bench.verdict.checking() || !isLevel(attitude)) return;
    const tone = toneSeen(bench, committed);
    if (!tone || (judged?.of === committed && judged.tone === tone)) return;
    judged = { of: committed, tone };
    const { fleetId } = api.getState();
    if (bench.fleet.get().cards.some(({ id }) => id === fleetId)) wait();
  });

  return {
    arrived: (late) => {
      void inTurn(() => recall(late));
      void inTurn(refresh);
      wait();
    },
    settle: async () => {
      write();
      await queue;
    },
    refresh,
    inTurn,
  };
}

const BLANK = writeAircraft(blankAircraft());
const DAMAGED_HISTORY =
  'The steps of the last visit could not be read, so undo does not reach back to them. The aircraft itself is whole.';

/** The word of the answer; null for an aircraft that cannot be worked out, which the answer tells of itself. */
function toneSeen({ verdict }: Bench, aircraft: Aircraft): Tone | null {
  try {
    return toneOf[withPower(aircraft, verdict.judgement()).severity];
  } catch {
    return null;
  }
}
