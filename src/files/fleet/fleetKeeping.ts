import type { Aircraft } from '../../model/document/types';
import { MANY_THINGS, thingsChanged } from '../../model/history/largeStep';
import { withPower } from '../../model/judgement/withPower';
import { isLevel } from '../../model/loads/attitude';
import { type Tone, toneOf } from '../../model/words/verdictFacts';
import type { Bench } from '../../store/bench';
import { type DocumentState, ownSteps } from '../../store/documentStore';
import type { Keeping } from '../keeping';
import { createPlaces, type PlaceParts } from './places';
import { createTurns } from './turns';

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

interface FleetKeepingParts extends PlaceParts {
  readonly keeping: Pick<Keeping, 'keeps'>;
  /** The page began with what it comes with: that is kept once something of it is changed. */
  readonly comesAfresh: boolean;
  refused(error: unknown): void;
  went(): void;
}

/** Keeps the fleet in step with the bench: each aircraft in its own place, with its history and its revisions. */
export function createFleetKeeping(parts: FleetKeepingParts): FleetKeeping {
  const { bench, keeping } = parts;
  const { api } = bench.document;
  const places = createPlaces(parts);
  const { inTurn, settled } = createTurns(parts);
  const judged = followTone(bench, () => {
    const { fleetId } = api.getState();
    if (bench.fleet.get().cards.some(({ id }) => id === fleetId)) wait();
  });
  let pending: DocumentState | null = null;
  const rest = restTimer(() => write());

  const write = () => {
    rest.stop();
    const state = pending;
    pending = null;
    if (!state) return;
    void inTurn(() => {
      const now = api.getState();
      const isSame = now.aircraftNumber === state.aircraftNumber && now.fleetId === state.fleetId;
      const latest = isSame ? now : state;
      return places.put(latest, judged(latest.committed));
    });
  };
  /** What the page comes with is no work yet. */
  const isFresh = (state: DocumentState) =>
    parts.comesAfresh && state.aircraftNumber === 0 && ownSteps(state).length === 0;
  const wait = () => {
    if (!keeping.keeps() || isFresh(api.getState())) return;
    pending = api.getState();
    rest.start();
  };

  api.subscribe((now, before) => {
    if (now.fleetId !== before.fleetId) return write();
    if (now.committed === before.committed) return;
    if (keeping.keeps() && thingsChanged(before.committed, now.committed) >= MANY_THINGS) {
      const label = now.past.at(-1)?.label;
      if (label && now.past.length > before.past.length)
        void inTurn(() => places.before(before, `before “${label}”`));
    }
    wait();
  });

  return {
    arrived: (late) => {
      void inTurn(() => places.recall(late));
      void inTurn(places.refresh);
      wait();
    },
    settle: async () => {
      write();
      await settled();
    },
    refresh: places.refresh,
    inTurn,
  };
}

/** Runs once nothing has started it again for a while, or the longest wait is over. */
function restTimer(run: () => void) {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let ceiling: ReturnType<typeof setTimeout> | undefined;
  return {
    start: () => {
      clearTimeout(timer);
      timer = setTimeout(run, REST_MS);
      ceiling ??= setTimeout(run, CEILING_MS);
    },
    stop: () => {
      clearTimeout(timer);
      clearTimeout(ceiling);
      ceiling = undefined;
    },
  };
}

/** Hears the word of the verdict, at rest and level; answers that of an aircraft, null where it was not heard of it. */
function followTone(bench: Bench, heard: () => void): (aircraft: Aircraft) => Tone | null {
  let judged: { readonly of: Aircraft; readonly tone: Tone } | null = null;
  bench.verdict.subscribe(() => {
    const { preview, committed } = bench.document.api.getState();
    const { attitude } = bench.view.getState();
    if (preview || bench.verdict.checking() || !isLevel(attitude)) return;
    const tone = toneSeen(bench, committed);
    if (!tone || (judged?.of === committed && judged.tone === tone)) return;
    judged = { of: committed, tone };
    heard();
  });
  return (aircraft) => (judged?.of === aircraft ? judged.tone : null);
}

/** The word of the answer; null for an aircraft that cannot be worked out, which the answer tells of itself. */
function toneSeen({ verdict }: Bench, aircraft: Aircraft): Tone | null {
  try {
    return toneOf[withPower(aircraft, verdict.judgement()).severity];
  } catch {
    return null;
  }
}
