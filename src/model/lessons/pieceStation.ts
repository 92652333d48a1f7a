import type { StructurePiece } from '../document/types';

/** A station that goes along with a piece of structure when it is moved, mm from the datum. */
export function pieceStationMm(piece: StructurePiece): number {
  switch (piece.kind) {
    case 'fuselage':
      return piece.sections[0]?.stationMm ?? 0;
    case 'surface':
      return piece.rootMm[0];
    case 'boom':
      return piece.frontMm[0];
    case 'leg':
      return piece.topMm[0];
    case 'block':
      return piece.positionMm[0];
  }
}
