import type { StoreApi } from 'zustand/vanilla';
import type { Vec3 } from '../engine/geometry/types';
import { itemById, placeItem } from '../model/document/edit';
import { createCalmStore } from './calmStore';
import type { DocumentStore } from './documentStore';

export interface DragState {
  /** The item in hand, or null. */
  readonly itemId: string | null;
  /** Where it stood when it was picked up, mm. */
  readonly fromMm: Vec3 | null;
}

/**
 * The one drag there can be, whether by the stage, the beam or the keyboard: a snapshot when it is
 * picked up, a preview for each move, one step when it is set down, and all as it was on cancel.
 */
export interface Drag {
  readonly api: StoreApi<DragState>;
  /** False when something is in hand already, or the item is locked or gone. */
  pickUp(itemId: string): boolean;
  /** Shows the item with its origin at a point, mm from the datum. */
  moveTo(positionMm: Vec3): void;
  setDown(): void;
  cancel(): void;
}

export function createDrag(document: DocumentStore): Drag {
  const api = createCalmStore<DragState>(() => ({ itemId: null, fromMm: null }));
  const letGo = () => api.setState({ itemId: null, fromMm: null });
  const samePlace = (a: Vec3, b: Vec3) => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
  return {
    api,
    pickUp: (itemId) => {
      const item = itemById(document.current(), itemId);
      const inHand = api.getState().itemId !== null || document.api.getState().preview !== null;
      if (!item || item.locked || inHand) return false;
      api.setState({ itemId, fromMm: item.positionMm });
      return true;
    },
    moveTo: (positionMm) => {
      const { itemId } = api.getState();
      if (itemId === null) return;
      document.preview(placeItem(document.api.getState().committed, itemId, positionMm));
    },
    setDown: () => {
      const { itemId, fromMm } = api.getState();
      if (itemId === null) return;
      const item = itemById(document.current(), itemId);
      letGo();
      if (item && fromMm && !samePlace(item.positionMm, fromMm)) document.commitPreview(`Move ${item.name}`);
      else document.cancel();
    },
    cancel: () => {
      if (api.getState().itemId === null) return;
      letGo();
      document.cancel();
    },
  };
}
