import type { StoreApi } from 'zustand/vanilla';
import type { Balance } from '../model/balance/balance';
import { bandSigmaOf } from '../model/balance/bandSigma';
import type { Certainty } from '../model/balance/certainty';
import type { Aircraft } from '../model/document/types';
import { type AttitudeTravel, attitudeTravel } from '../model/loads/attitude';
import { DONE, hasOtherLoadStates, type LoadSearch, NOT_NEEDED, WAITING } from '../model/loads/loadSearch';
import type { LoadEnvelope } from '../model/loads/loadStates';
import type { BalanceStore } from './balanceStore';
import { createCalmStore, reportFault } from './calmStore';
import type { DocumentStore } from './documentStore';
import { type EnvelopeSolve, type RunningSearch, startSearch } from './loadSearcher';
import type { ViewStore } from './viewStore';

export type { EnvelopeSolve } from './loadSearcher';

/** How sure the balance is; it comes after the first paint. */
export type CertaintyOf = (aircraft: Aircraft, balance: Balance) => Certainty;

/** What takes too long for a frame of a drag, each null while it is not known for what is seen now. */
export interface RestState {
  /** The extremes over all load states; only sought where there is a switch. */
  readonly envelope: LoadEnvelope | null;
  /** How far that search has come; until it is done nothing is known of the other load states. */
  readonly loadSearch: LoadSearch;
  readonly certainty: Certainty | null;
  /** How far the CG wanders with the attitude, with the fuel shown. */
  readonly wander: AttitudeTravel | null;
}

/** Keeps such answers up with the bench: dropped at once when what they were for changes, worked out again at rest. */
export interface RestStore {
  readonly api: StoreApi<RestState>;
  get(): RestState;
  subscribe(listener: () => void): () => void;
  /** Load states are not searched before this. */
  start(solve: EnvelopeSolve): void;
  /** How sure the balance is, is not known before this. */
  startCertainty(certaintyOf: CertaintyOf): void;
  /** Searches the load states again after a search that failed or ran out of time. */
  retrySearch(): void;
  /** Waits no longer for a rest: for a bench that is done with, which its timer would keep alive. */
  stop(): void;
}

/** How long nothing must change before it counts as rest, ms. */
const REST_MS = 120;

type Key = Exclude<keyof RestState, 'loadSearch'>;

export function createRestStore(document: DocumentStore, view: ViewStore, balance: BalanceStore): RestStore {
  const api = createCalmStore<RestState>(() => ({
    envelope: null,
    loadSearch: searchState(),
    certainty: null,
    wander: null,
  }));
  /** What each answer was worked out from. */
  const answered: Record<Key, readonly unknown[] | null> = { envelope: null, certainty: null, wander: null };
  let solve: EnvelopeSolve | null = null;
  let certaintyOf: CertaintyOf | null = null;
  let running: { readonly asked: readonly unknown[]; readonly search: RunningSearch } | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;

  function searchState(): LoadSearch {
    return hasOtherLoadStates(document.current()) ? WAITING : NOT_NEEDED;
  }

  const causes = (): Record<Key, readonly unknown[]> => {
    const aircraft = document.current();
    const { down, positions, fuelFraction } = view.getState();
    const answer = balance.get();
    const { band } = answer;
    return {
      envelope: [aircraft, down],
      certainty: [aircraft, down, positions, band?.forwardMm, band?.aftMm, bandSigmaOf(answer)],
      wander: [aircraft, positions, fuelFraction],
    };
  };
  const fresh = (key: Key, now: Record<Key, readonly unknown[]>) =>
    answered[key]?.every((cause, index) => cause === now[key][index]) ?? false;

  const drop = () => {
    const now = causes();
    const stale = (['envelope', 'certainty', 'wander'] as const).filter((key) => !fresh(key, now));
    const gone = stale.filter((key) => api.getState()[key] !== null);
    for (const key of stale) answered[key] = null;
    const change: Partial<RestState> = Object.fromEntries(gone.map((key) => [key, null]));
    const searchGone = stale.includes('envelope') && api.getState().loadSearch.state !== searchState().state;
    if (gone.length > 0 || searchGone) {
      api.setState(stale.includes('envelope') ? { ...change, loadSearch: searchState() } : change);
    }
    if (stale.length > 0) wait();
  };

  const wait = () => {
    clearTimeout(timer);
    timer = setTimeout(work, REST_MS);
  };

  const work = () => {
    if (document.api.getState().preview !== null) return wait();
    const now = causes();
    const found: Partial<Record<Key, unknown>> = {};
    const sure = certaintyOf;
    if (sure && !fresh('certainty', now))
      found.certainty = orNotKnown(() => sure(document.current(), balance.get()));
    if (!fresh('wander', now)) found.wander = orNotKnown(() => attitudeTravel(balance.get()));
    Object.assign(answered, Object.fromEntries(Object.keys(found).map((key) => [key, now[key as Key]])));
    if (Object.keys(found).length > 0) api.setState(found as Partial<RestState>);
    if (!fresh('envelope', now)) search(now.envelope);
  };

  const search = async (asked: readonly unknown[]) => {
    const aircraft = document.current();
    if (!solve || !hasOtherLoadStates(aircraft)) return;
    if (running && asked.every((cause, index) => cause === running?.asked[index])) return;
    running?.search.callOff();
    const mine = { asked, search: startSearch(solve, aircraft, view.getState().down) };
    running = mine;
    const outcome = await mine.search.outcome;
    if (running !== mine) return;
    running = null;
    const now = causes().envelope;
    if (outcome.state === 'called off' || !asked.every((cause, index) => cause === now[index])) return wait();
    answered.envelope = asked;
    api.setState(
      outcome.state === 'found'
        ? { envelope: outcome.envelope, loadSearch: DONE }
        : { envelope: null, loadSearch: outcome },
    );
  };

  const unsubscribe = balance.subscribe(drop);
  wait();
  return {
    api,
    get: api.getState,
    subscribe: (listener) => api.subscribe(listener),
    start: (given) => {
      solve = given;
      wait();
    },
    startCertainty: (given) => {
      certaintyOf = given;
      wait();
    },
    retrySearch: () => {
      const { state } = api.getState().loadSearch;
      if (state !== 'failed' && state !== 'timed out') return;
      answered.envelope = null;
      api.setState({ loadSearch: searchState() });
      wait();
    },
    stop: () => {
      unsubscribe();
      clearTimeout(timer);
    },
  };
}

/** What a derivation that fails gives: nothing, and its error to whoever listens for the page's errors. */
function orNotKnown<T>(derive: () => T): T | null {
  try {
    return derive();
  } catch (error) {
    reportFault(error);
    return null;
  }
}
