import { replaceStructure, structureById } from '../../model/document/edit';
import type { Aircraft, StructurePiece } from '../../model/document/types';

export type Kind = StructurePiece['kind'];
export type PieceOf<K extends Kind> = Extract<StructurePiece, { kind: K }>;

/** One piece of structure seen through its kind: how to read it, and how to change some of its fields. */
export interface Lens<K extends Kind> {
  readonly name: string;
  read(aircraft: Aircraft): PieceOf<K> | undefined;
  change(aircraft: Aircraft, fields: Partial<PieceOf<K>>): Aircraft;
}

/** The lens on one piece, for as long as it is of that kind. */
export function lensOn<K extends Kind>(id: string, kind: K, name: string): Lens<K> {
  const read = (aircraft: Aircraft) => {
    const piece = structureById(aircraft, id);
    return piece?.kind === kind ? (piece as PieceOf<K>) : undefined;
  };
  return {
    name,
    read,
    change: (aircraft, fields) => {
      const piece = read(aircraft);
      return piece ? replaceStructure(aircraft, { ...piece, ...fields } as StructurePiece) : aircraft;
    },
  };
}
