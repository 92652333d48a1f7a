import type { MassFrom, MassSource, StructurePiece } from '../document/types';

type Massive = Exclude<StructurePiece, { kind: 'leg' }>;

const isByDensity = (piece: StructurePiece): boolean => piece.kind !== 'leg' && piece.mass.by !== 'weighed';

/** Sources that only something on a scale has. */
const isFromScale = (source: MassFrom | undefined): boolean => source === 'weighed' || source === 'measured';

/**
 * A piece of structure with a mass from elsewhere: one that was put on a scale is weighed from then on, one that is worked
 * out by its density is so no more. The ± goes with the source that it was stated for.
 */
export function withMassSource(piece: Massive, mass: MassSource): Massive {
  if ((piece.mass.by === 'weighed') === (mass.by === 'weighed')) return { ...piece, mass };
  const { plusMinusG: _stated, massFrom, ...rest } = piece;
  if (mass.by === 'weighed') return { ...rest, mass, massFrom: 'weighed' };
  return { ...rest, mass, ...(massFrom && !isFromScale(massFrom) && { massFrom }) };
}

/** Why a piece's mass cannot come from there, in a sentence: what a density makes of it was on no scale. */
export const sourceRefusal = (
  piece: StructurePiece | undefined,
  source: MassFrom | undefined,
): string | null =>
  piece && isByDensity(piece) && isFromScale(source)
    ? 'Its mass is worked out from a density. Choose “Mass by: Weighed” and type what the scale says.'
    : null;
