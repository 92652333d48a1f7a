import type { StoreApi } from 'zustand/vanilla';
import type { Vec3 } from '../engine/geometry/types';
import { switchesOf } from '../model/airframe/loadSwitches';
import { type Certainty, certaintyOf } from '../model/balance/certainty';
import type { Aircraft } from '../model/document/types';
import { type AttitudeTravel, attitudeTravel } from '../model/loads/attitude';
import type { LoadEnvelope } from '../model/loads/loadStates';
import type { BalanceStore } from './balanceStore';
import { createCalmStore } from './calmStore';
import type { DocumentStore } from './documentStore';
import type { ViewStore } from './viewStore';

/** Searches all load states elsewhere: in a worker, or in a test by hand. */
export type EnvelopeSolve = (aircraft: Aircraft, down: Vec3) => Promise<LoadEnvelope | null>;

/** What takes too long for a frame of a drag, each null while it is not known for what is seen now. */
export interface RestState {
  /** The extremes over all load states; only sought where there is a switch. */
  readonly envelope: LoadEnvelope | null;
  readonly certainty: Certainty | null;
  /** How far the CG wanders with the attitude, with the fuel shown. */
  readonly wander: AttitudeTravel | null;
}

/** Keeps such answers up with the bench: dropped at once when what they were for changes, worked out anew at rest. */
export interface RestStore {
  readonly api: StoreApi<RestState>;
  get(): RestState;
  subscribe(listener: () => void): () => void;
  /** Load states are not searched before this. */
  start(solve: EnvelopeSolve): void;
}

/** How long nothing must change before it counts as rest, ms. */
const REST_MS = 120;

type Key = keyof RestState;

export function createRestStore(document: DocumentStore, view: ViewStore, balance: BalanceStore): RestStore {
  const api = createCalmStore<RestState>(() => ({ envelope: null, certainty: null, wander: null }));
  /** What each answer was worked out from. */
  const known: Record<Key, readonly unknown[] | null> = { envelope: null, certainty: null, wander: null };
  let solve: EnvelopeSolve | null = null;
  let solving = false;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const causes = (): Record<Key, readonly unknown[]> => {
    const aircraft = document.current();
    const { down, positions, fuelFraction } = view.getState();
    const { band } = balance.get();
    return {
      envelope: [aircraft, down],
      certainty: [aircraft, down, positions, band?.forwardMm, band?.aftMm],
      wander: [aircraft, positions, fuelFraction],
    };
  };
  const fresh = (key: Key, now: Record<Key, readonly unknown[]>) =>
    known[key]?.every((cause, index) => cause === now[key][index]) ?? false;

  const drop = () => {
    const now = causes();
    const stale = (['envelope', 'certainty', 'wander'] as const).filter((key) => !fresh(key, now));
    const gone = stale.filter((key) => api.getState()[key] !== null);
    for (const key of stale) known[key] = null;
    if (gone.length > 0) api.setState(Object.fromEntries(gone.map((key) => [key, null])));
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
    if (!fresh('certainty', now)) found.certainty = certaintyOf(document.current(), balance.get());
    if (!fresh('wander', now)) found.wander = attitudeTravel(balance.get());
    Object.assign(known, Object.fromEntries(Object.keys(found).map((key) => [key, now[key as Key]])));
    if (Object.keys(found).length > 0) api.setState(found as Partial<RestState>);
    if (!fresh('envelope', now)) search(now.envelope);
  };

  const search = async (asked: readonly unknown[]) => {
    const aircraft = document.current();
    if (!solve || solving || switchesOf(aircraft).length === 0) return;
    solving = true;
    const envelope = await solve(aircraft, view.getState().down).catch(() => null);
    solving = false;
    const now = causes().envelope;
    if (!asked.every((cause, index) => cause === now[index])) return wait();
    known.envelope = asked;
    api.setState({ envelope });
  };

  balance.subscribe(drop);
  wait();
  return {
    api,
    get: api.getState,
    subscribe: (listener) => api.subscribe(listener),
    start: (given) => {
      solve = given;
      wait();
    },
  };
}
