import { foldWeight, gapWeight, nearerWeight, overlapWeight } from './seamWeight';
import { acrossMm, type ChordLine, type Stretch, stretchLengthMm } from './stretch';

/** One end of a surface's right half. */
export interface PieceEnd {
  /** Index of the surface. */
  readonly piece: number;
  readonly end: 'root' | 'tip';
}

/** Two edges that belong together, or an edge that carries on to the plane of symmetry. */
export interface Seam {
  readonly a: PieceEnd;
  readonly b: PieceEnd | 'plane';
  /** How far they count as joined: above 0, at most 1. */
  readonly weight: number;
  /** Across the flow, mm; to the plane of symmetry for a seam with it. */
  readonly gapMm: number;
}

export type Piece = readonly Stretch[];

/** The chord line at an end of a piece. */
export function endLine(piece: Piece, end: PieceEnd['end']): ChordLine {
  const stretch = end === 'root' ? piece[0] : piece.at(-1);
  if (stretch === undefined) throw new Error('a lifting surface needs at least one panel');
  return end === 'root' ? stretch.from : stretch.to;
}

const ENDS = ['root', 'tip'] as const;

/**
 * The seams among surfaces, each with its weight by geometry: edges beside each other, and edges at the
 * plane of symmetry. `carries` gives, surface by surface, how far a root is carried to the plane of
 * symmetry by a body or by choice, 0 … 1; null leaves it to the gap alone.
 */
export function findSeams(pieces: readonly Piece[], carries: readonly (number | null)[]): Seam[] {
  const ends = pieces.flatMap((_, piece) => ENDS.map((end) => ({ piece, end })));
  const lineOf = ({ piece, end }: PieceEnd) => endLine(pieces[piece] as Piece, end);
  const seams: Seam[] = [];
  const pairs: PairSeam[] = [];
  ends.forEach((a, index) => {
    const line = lineOf(a);
    const gapMm = Math.abs(line.leadingMm[1]);
    const choice = a.end === 'root' ? carries[a.piece] : null;
    const weight = choice ?? gapWeight(2 * gapMm, line.chordMm);
    if (weight > 0) seams.push({ a, b: 'plane', weight, gapMm });
    for (const b of ends.slice(index + 1)) {
      if (b.piece === a.piece) continue;
      const fold = foldWeight(cosBetween(awayFrom(pieces, a), awayFrom(pieces, b)));
      const found =
        fold * edgeWeight(line, lineOf(b), Math.min(lengthOf(pieces[a.piece]), lengthOf(pieces[b.piece])));
      if (found > 0)
        pairs.push({ a, b, weight: found, gapMm: acrossMm(line, lineOf(b)), chordMm: line.chordMm });
    }
  });
  return [...seams, ...nearestOf(pairs)];
}

interface PairSeam extends Seam {
  readonly b: PieceEnd;
  readonly chordMm: number;
}

/** The seams between pieces, less those that reach over a nearer partner of either end: a sliver between them. */
function nearestOf(pairs: readonly PairSeam[]): Seam[] {
  const meets = (pair: PairSeam, { piece, end }: PieceEnd) =>
    [pair.a, pair.b].some((other) => other.piece === piece && other.end === end);
  return pairs.flatMap(({ a, b, weight, gapMm, chordMm }) => {
    let kept = weight;
    for (const rival of pairs) {
      if (rival.gapMm >= gapMm || !(meets(rival, a) || meets(rival, b))) continue;
      kept *= 1 - rival.weight * nearerWeight(rival.gapMm, gapMm, chordMm);
    }
    return kept > 0 ? [{ a, b, weight: kept, gapMm }] : [];
  });
}

function lengthOf(piece: Piece | undefined): number {
  return piece?.reduce((sum, stretch) => sum + stretchLengthMm(stretch), 0) ?? 0;
}

/** A gap is narrow beside the chord and beside the shorter piece, or a sliver would be skipped. */
function edgeWeight(a: ChordLine, b: ChordLine, shorterPieceMm: number): number {
  const longer = Math.max(a.chordMm, b.chordMm);
  const [ax, bx] = [a.leadingMm[0], b.leadingMm[0]];
  const shared = Math.min(ax + a.chordMm, bx + b.chordMm) - Math.max(ax, bx);
  return (
    gapWeight(acrossMm(a, b), Math.min(longer, shorterPieceMm)) * overlapWeight(Math.max(0, shared), longer)
  );
}

/** Unit direction across the flow from an end into its piece, y and z. */
function awayFrom(pieces: readonly Piece[], { piece, end }: PieceEnd): readonly [number, number] {
  const stretch = end === 'root' ? pieces[piece]?.[0] : pieces[piece]?.at(-1);
  if (stretch === undefined) return [0, 0];
  const [from, to] = end === 'root' ? [stretch.from, stretch.to] : [stretch.to, stretch.from];
  const [dy, dz] = [to.leadingMm[1] - from.leadingMm[1], to.leadingMm[2] - from.leadingMm[2]];
  const length = Math.hypot(dy, dz);
  return [dy / length, dz / length];
}

const cosBetween = (a: readonly [number, number], b: readonly [number, number]) => a[0] * b[0] + a[1] * b[1];
