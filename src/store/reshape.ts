import type { StoreApi } from 'zustand/vanilla';
import { replaceStructure, structureById } from '../model/document/edit';
import type { StructurePiece } from '../model/document/types';
import { createCalmStore } from './calmStore';
import type { DocumentStore } from './documentStore';

export interface ReshapeState {
  /** The piece of structure in hand, or null. */
  readonly pieceId: string | null;
}

/**
 * Changes a piece of structure by hand, as a wing whose tip is dragged: a snapshot when it is taken, a
 * preview for each move, one step when it is let go, and all as it was on cancel.
 */
export interface Reshape {
  readonly api: StoreApi<ReshapeState>;
  /** The piece as it is, or null when something is in hand already or it is gone. */
  pickUp(pieceId: string): StructurePiece | null;
  /** Shows the piece in another shape. */
  show(piece: StructurePiece): void;
  /** `step` is what undo would take back. */
  setDown(step: string): void;
  cancel(): void;
}

export function createReshape(document: DocumentStore): Reshape {
  const api = createCalmStore<ReshapeState>(() => ({ pieceId: null }));
  return {
    api,
    pickUp: (pieceId) => {
      const { committed, preview } = document.api.getState();
      const piece = structureById(committed, pieceId);
      if (!piece || preview || api.getState().pieceId !== null) return null;
      api.setState({ pieceId });
      return piece;
    },
    show: (piece) => {
      const { committed } = document.api.getState();
      if (piece.id !== api.getState().pieceId || !structureById(committed, piece.id)) return;
      document.preview(replaceStructure(committed, piece));
    },
    setDown: (step) => {
      const { pieceId } = api.getState();
      if (pieceId === null) return;
      const { committed, preview } = document.api.getState();
      api.setState({ pieceId: null });
      if (preview && !sameShape(structureById(committed, pieceId), structureById(preview, pieceId))) {
        document.commitPreview(step);
      } else document.cancel();
    },
    cancel: () => {
      if (api.getState().pieceId === null) return;
      api.setState({ pieceId: null });
      document.cancel();
    },
  };
}

const sameShape = (a: StructurePiece | undefined, b: StructurePiece | undefined) =>
  JSON.stringify(a) === JSON.stringify(b);
