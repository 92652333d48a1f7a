import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Vec3 } from '../engine/geometry/types';
import { LEVEL } from '../model/balance';
import type { UnitSystem } from '../model/units';

export type View = 'free' | 'side' | 'top' | 'front';
export type Theme = 'system' | 'light' | 'dark';

/** What is being looked at and how; none of it is the aircraft's. */
export interface ViewState {
  readonly view: View;
  readonly selectedId: string | null;
  readonly hoveredId: string | null;
  /** Usable liquid left at the moment shown, 1 full to 0 dry. */
  readonly fuelFraction: number;
  readonly playing: boolean;
  /** Apparent down in the aircraft's frame. */
  readonly down: Vec3;
  readonly units: UnitSystem;
  /** The reference point that readings are shown from; null is the datum. */
  readonly measureFromId: string | null;
  readonly theme: Theme;
}

export type ViewStore = StoreApi<ViewState>;

export function createViewStore(initial: Partial<ViewState> = {}): ViewStore {
  return createStore<ViewState>(() => ({
    view: 'free',
    selectedId: null,
    hoveredId: null,
    fuelFraction: 1,
    playing: false,
    down: LEVEL,
    units: 'metric',
    measureFromId: null,
    theme: 'system',
    ...initial,
  }));
}
