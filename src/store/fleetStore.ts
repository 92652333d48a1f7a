import type { StoreApi } from 'zustand/vanilla';
import type { Outline } from '../model/weigh/outlines';
import type { Tone } from '../model/words/verdict';
import { createCalmStore } from './calmStore';

/** One aircraft of the fleet as its card shows it; the document itself stays in the browser's store until it is taken. */
export interface FleetCard {
  readonly id: string;
  readonly name: string;
  /** Ready to fly, as shown when it was last on the bench, g; null where nothing has a mass. */
  readonly massG: number | null;
  /** As judged when it was last on the bench; null before that. */
  readonly tone: Tone | null;
  /** Seen from above, mm. */
  readonly picture: readonly Outline[];
  /** A mark of its text, by which the same aircraft is known again. */
  readonly digest: string;
  /** When the aircraft itself last changed, ms since 1970. */
  readonly changedAtMs: number;
  /** When it was put among the deleted, ms since 1970; null while it is not. */
  readonly deletedAtMs: number | null;
}

/** An earlier state of the aircraft on the bench. */
export interface Revision {
  readonly key: number;
  readonly atMs: number;
  /** What the person called it; null for one that was kept by itself. */
  readonly name: string | null;
  /** Why one was kept by itself, in a few words. */
  readonly why: string;
}

export interface FleetState {
  /** `reading` until the browser's store has answered; `tab` where it keeps nothing, so the fleet goes with the tab. */
  readonly where: 'reading' | 'browser' | 'tab';
  /** Deleted ones among them, in no order. */
  readonly cards: readonly FleetCard[];
  /** What the browser refuses, in a sentence; null while it keeps everything. */
  readonly trouble: string | null;
  /** Whether the browser promised not to clear the store by itself; null before it was asked or where it cannot be. */
  readonly promised: boolean | null;
  /** Those of the aircraft on the bench, latest first. */
  readonly revisions: readonly Revision[];
  /** The sheet with the revisions stands open. */
  readonly revisionsOpen: boolean;
}

export interface FleetStore {
  readonly api: StoreApi<FleetState>;
  get(): FleetState;
  subscribe(listener: () => void): () => void;
}

/** What the panels know of the fleet. It is filled by whoever keeps it. */
export function createFleetStore(): FleetStore {
  const api = createCalmStore<FleetState>(() => ({
    where: 'reading',
    cards: [],
    trouble: null,
    promised: null,
    revisions: [],
    revisionsOpen: false,
  }));
  return { api, get: api.getState, subscribe: (listener) => api.subscribe(listener) };
}
