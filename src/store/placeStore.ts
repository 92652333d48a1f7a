import type { StoreApi } from 'zustand/vanilla';
import type { Band } from '../engine/balance/band';
import type { TravelPoint } from '../engine/balance/travel';
import type { Vec3 } from '../engine/geometry/types';
import type { Shape } from '../engine/mass/shapes';
import type { BodyRole } from '../model/airframe/bodies';
import type { Aircraft, Part } from '../model/document/types';
import { bandToKeep, type KeptBand } from '../model/judgement/bandToKeep';
import type { ItemZone } from '../model/place/itemZone';
import type { PlaceSolver } from '../model/place/tasks';
import type { BalanceStore } from './balanceStore';
import { createCalmStore } from './calmStore';
import type { DocumentStore } from './documentStore';
import type { Drag } from './drag';
import type { ViewStore } from './viewStore';

/** What an outline is drawn of. */
export type GhostItem = Pick<Part, 'id' | 'massG' | 'positionMm' | 'yawDeg' | 'pitchDeg' | 'rollDeg'> & {
  readonly role: BodyRole;
  readonly shape: Shape;
};

/** Another state of the aircraft that is only looked at: outlines where things would go, or stood. */
export interface Ghost {
  /** What would stand elsewhere, and ballast that would come. */
  readonly parts: readonly GhostItem[];
  /** Where the CG would be at the loading shown. */
  readonly cgMm: Vec3 | null;
  /** Its CG travel from full to dry, where that is to be seen too. */
  readonly travel?: readonly TravelPoint[];
}

export interface PlaceState {
  /** The sheet for arranging is open. */
  readonly open: boolean;
  readonly ghost: Ghost | null;
  /** The stage shows where ballast may go and where not. */
  readonly ballastShown: boolean;
  /** How long a search for an arrangement may take, ms. */
  readonly searchMs: number;
}

const SEARCH_MS = 40_000;

/** What comes after the first paint: the zone of an item, and the search in its worker. */
export interface PlaceParts {
  itemZone(aircraft: Aircraft, itemId: string, down: Vec3, band: Band | null): ItemZone | null;
  readonly solve: PlaceSolver;
}

export interface PlaceStore {
  readonly api: StoreApi<PlaceState>;
  get(): PlaceState;
  subscribe(listener: () => void): () => void;
  /**
   * Where an item may sit, everything else where it is; null before that is known. The very same while only that item
   * is dragged: its zone does not depend on where it is. Null while it is dragged together with others.
   */
  zone(itemId: string): ItemZone | null;
  /** What a place is held against, by the zone and by every search; null without a band. */
  band(): KeptBand | null;
  /** Null before the start. */
  solver(): PlaceSolver | null;
  start(parts: PlaceParts): void;
}

export function createPlaceStore(
  document: DocumentStore,
  view: ViewStore,
  drag: Drag,
  balance: BalanceStore,
): PlaceStore {
  const api = createCalmStore<PlaceState>(() => ({
    open: false,
    ghost: null,
    ballastShown: false,
    searchMs: SEARCH_MS,
  }));
  let given: PlaceParts | null = null;
  // A ghost belongs to the aircraft that it was made for.
  document.api.subscribe((now, before) => {
    if (now.committed !== before.committed && api.getState().ghost) api.setState({ ghost: null });
  });
  const aircraftHeld = (inHand: boolean) => (inHand ? document.api.getState().committed : document.current());
  return {
    api,
    get: api.getState,
    subscribe: (listener) => api.subscribe(listener),
    band: () => bandToKeep(balance.get(), document.api.getState().committed),
    zone: (itemId) => {
      const hand = drag.api.getState();
      if (hand.alongIds.length > 0) return null;
      const aircraft = aircraftHeld(hand.itemId === itemId);
      return (
        given?.itemZone(aircraft, itemId, view.getState().down, bandToKeep(balance.get(), aircraft)) ?? null
      );
    },
    solver: () => given?.solve ?? null,
    start: (parts) => {
      given = parts;
      api.setState({});
    },
  };
}
