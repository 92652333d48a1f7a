import type { StoreApi } from 'zustand/vanilla';
import type { Vec3 } from '../engine/geometry/types';
import { add, sub } from '../engine/geometry/vec3';
import { itemById, placeItem } from '../model/document/edit';
import { eachPairOnce } from '../model/document/twins';
import type { Aircraft } from '../model/document/types';
import { createCalmStore } from './calmStore';
import type { DocumentStore } from './documentStore';

export interface DragState {
  /** The item in hand, or null. */
  readonly itemId: string | null;
  /** Where it stood when it was picked up, mm. */
  readonly fromMm: Vec3 | null;
  /** What was chosen together with it and goes along; what is locked stays. */
  readonly alongIds: readonly string[];
}

/**
 * The one drag there can be, whether by the stage, the beam or the keyboard: a snapshot when it is
 * picked up, a preview for each move, one step when it is set down, and all as it was on cancel.
 */
export interface Drag {
  readonly api: StoreApi<DragState>;
  /** With all that is chosen together with it. False when something is in hand already, or the item is locked or gone. */
  pickUp(itemId: string): boolean;
  /** Shows the item with its origin at a point, mm from the datum, and what goes along moved by as much. */
  moveTo(positionMm: Vec3): void;
  setDown(): void;
  cancel(): void;
}

const NOTHING: DragState = { itemId: null, fromMm: null, alongIds: [] };

const samePlace = (a: Vec3, b: Vec3) => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];

/**
 * What goes along with an item: what is chosen together with it, if it is chosen itself, and may move. Of a mirrored pair
 * one does, for the other follows that.
 */
function companions(aircraft: Aircraft, itemId: string, chosen: readonly string[]): readonly string[] {
  if (!chosen.includes(itemId)) return [];
  const mayMove = (id: string) => {
    const item = itemById(aircraft, id);
    return item !== undefined && !item.locked;
  };
  return eachPairOnce(aircraft, [itemId, ...chosen.filter((id) => id !== itemId && mayMove(id))]).slice(1);
}

/** An item with its origin at a point, and its companions moved by as much. */
function placeTogether(aircraft: Aircraft, { itemId, fromMm, alongIds }: DragState, toMm: Vec3): Aircraft {
  if (itemId === null || fromMm === null) return aircraft;
  const by = sub(toMm, fromMm);
  return alongIds.reduce(
    (now, id) => {
      const item = itemById(now, id);
      return item ? placeItem(now, id, add(item.positionMm, by)) : now;
    },
    placeItem(aircraft, itemId, toMm),
  );
}

/** `chosenIds` gives what is chosen together at the moment. */
export function createDrag(document: DocumentStore, chosenIds: () => readonly string[] = () => []): Drag {
  const api = createCalmStore<DragState>(() => NOTHING);
  const letGo = () => api.setState(NOTHING);
  return {
    api,
    pickUp: (itemId) => {
      const item = itemById(document.current(), itemId);
      const inHand = api.getState().itemId !== null || document.api.getState().preview !== null;
      if (!item || item.locked || inHand) return false;
      const alongIds = companions(document.current(), itemId, chosenIds());
      api.setState({ itemId, fromMm: item.positionMm, alongIds });
      return true;
    },
    moveTo: (positionMm) => {
      if (api.getState().itemId === null) return;
      document.preview(placeTogether(document.api.getState().committed, api.getState(), positionMm));
    },
    setDown: () => {
      const { itemId, fromMm, alongIds } = api.getState();
      if (itemId === null) return;
      const item = itemById(document.current(), itemId);
      letGo();
      const others = alongIds.length > 0 ? ` and ${alongIds.length} more` : '';
      if (item && fromMm && !samePlace(item.positionMm, fromMm))
        document.commitPreview(`Move ${item.name}${others}`);
      else document.cancel();
    },
    cancel: () => {
      if (api.getState().itemId === null) return;
      letGo();
      document.cancel();
    },
  };
}
