import type { StoreApi } from 'zustand/vanilla';
import { replaceStructure, structureById, updateTank } from '../model/document/edit';
import type { Aircraft, StructurePiece, TankItem } from '../model/document/types';
import { editFault } from '../model/reading/editFault';
import { createCalmStore } from './calmStore';
import type { DocumentStore } from './documentStore';

export interface ReshapeState {
  /** The piece of structure, or the tank, in hand; or null. */
  readonly pieceId: string | null;
}

/** What can be given another shape by hand. */
export type Reshapable = StructurePiece | TankItem;

const thingById = (aircraft: Aircraft, id: string): Reshapable | undefined =>
  structureById(aircraft, id) ?? aircraft.tanks.find((tank) => tank.id === id);

const put = (aircraft: Aircraft, thing: Reshapable): Aircraft =>
  'kind' in thing ? replaceStructure(aircraft, thing) : updateTank(aircraft, thing.id, thing);

/**
 * Changes a piece of structure or a tank by hand, as a wing whose tip is dragged: a snapshot when it is taken, a
 * preview for each move, one step when it is let go, and all as it was on cancel.
 */
export interface Reshape {
  readonly api: StoreApi<ReshapeState>;
  /** The piece as it is, or null when something is in hand already or it is gone. */
  pickUp(pieceId: string): Reshapable | null;
  /** Shows the piece in another shape. */
  show(piece: Reshapable): void;
  /** `step` is what undo would take back. A sentence says why it cannot be so; then all is as it was. */
  setDown(step: string): string | null;
  cancel(): void;
}

export function createReshape(document: DocumentStore): Reshape {
  const api = createCalmStore<ReshapeState>(() => ({ pieceId: null }));
  return {
    api,
    pickUp: (pieceId) => {
      const { committed, preview } = document.api.getState();
      const piece = thingById(committed, pieceId);
      if (!piece || preview || api.getState().pieceId !== null) return null;
      api.setState({ pieceId });
      return piece;
    },
    show: (piece) => {
      const { committed } = document.api.getState();
      if (piece.id !== api.getState().pieceId || !thingById(committed, piece.id)) return;
      document.preview(put(committed, piece));
    },
    setDown: (step) => {
      const { pieceId } = api.getState();
      if (pieceId === null) return null;
      const { committed, preview } = document.api.getState();
      api.setState({ pieceId: null });
      const changed = preview && !sameShape(thingById(committed, pieceId), thingById(preview, pieceId));
      const fault = changed ? editFault(committed, preview) : null;
      if (changed && fault === null) document.commitPreview(step);
      else document.cancel();
      return fault;
    },
    cancel: () => {
      if (api.getState().pieceId === null) return;
      api.setState({ pieceId: null });
      document.cancel();
    },
  };
}

const sameShape = (a: Reshapable | undefined, b: Reshapable | undefined) =>
  JSON.stringify(a) === JSON.stringify(b);
