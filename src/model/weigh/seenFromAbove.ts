import type { Aircraft, StructurePiece } from '../document/types';
import { type Outline, outlinesOf } from './outlines';

/** The outlines seen from above, in the order that they cover each other: what stands lower first. */
export function seenFromAbove(aircraft: Aircraft): readonly Outline[] {
  const heights = new Map(aircraft.structure.map((piece) => [piece.id, heightOf(piece)]));
  const height = ({ id }: Outline) => heights.get(id.split('.')[0] ?? id) ?? 0;
  return [...outlinesOf(aircraft, 'top')].sort((a, b) => height(a) - height(b));
}

/** The waterline that a piece is seen at, mm: legs below all else, a body at its middle. */
function heightOf(piece: StructurePiece): number {
  switch (piece.kind) {
    case 'leg':
      return Number.NEGATIVE_INFINITY;
    case 'surface':
      return piece.rootMm[2];
    case 'boom':
      return (piece.frontMm[2] + piece.rearMm[2]) / 2 - 1;
    case 'fuselage':
      return piece.sections[0]?.waterlineMm ?? 0;
    case 'block':
      return piece.positionMm[2];
  }
}
