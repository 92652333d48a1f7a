import type { StoreApi } from 'zustand/vanilla';
import type { Aircraft } from '../model/document/types';
import type { Entry } from '../model/fit/entryThroughAny';
import type { FittingOrder } from '../model/fit/fittingOrder';
import { createCalmStore } from './calmStore';

/** Searches elsewhere: in a worker, or in a test by hand. A search that is overtaken by another gives null. */
export interface FitSearch {
  entry(aircraft: Aircraft, itemId: string): Promise<Entry | null>;
  order(aircraft: Aircraft): Promise<FittingOrder | null>;
  /** Gives up what is being searched for. */
  stop(): void;
}

export interface FitState {
  /** Bays and hatches are being edited, so they show whatever is selected. */
  readonly roomsShown: boolean;
  /** A part is shown on its way in; what it passes is no clash. */
  readonly playing: boolean;
}

export interface FitStore {
  readonly api: StoreApi<FitState>;
  get(): FitState;
  subscribe(listener: () => void): () => void;
  /** Null until the searches can be run. */
  search(): FitSearch | null;
  start(search: FitSearch): void;
}

export function createFitStore(): FitStore {
  const api = createCalmStore<FitState>(() => ({ roomsShown: false, playing: false }));
  let given: FitSearch | null = null;
  return {
    api,
    get: api.getState,
    subscribe: (listener) => api.subscribe(listener),
    search: () => given,
    start: (search) => {
      given = search;
    },
  };
}
