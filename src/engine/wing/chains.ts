import { endLine, type Piece, type PieceEnd, type Seam } from './seams';
import {
  acrossMm,
  between,
  bridge,
  type ChordLine,
  reversed,
  type Stretch,
  stretchesOf,
  stretchLengthMm,
} from './stretch';
import type { LiftingSurface } from './types';

/** What a chain comes to at an end: nothing, the plane of symmetry, or other chains. */
export type ChainEnd = 'free' | 'joined';

/**
 * Surfaces of the right half that follow one another along shared edges: one lifting line of stretches,
 * each starting where the one before ended, cut into strips as a whole.
 */
export interface Chain {
  readonly stretches: readonly Stretch[];
  readonly start: ChainEnd;
  readonly end: ChainEnd;
  /** Chains that meet at a junction bear the same number. */
  readonly component: number;
}

/** A step in chord between two pieces is spread over this share of it, so that it cannot fall between strips. */
const RAMP_PER_STEP = 0.25;
/** Steps and gaps below this share of the chord are rounding. */
const ROUNDING = 1e-9;

type Contact = { readonly end: PieceEnd } | { readonly line: ChordLine } | 'plane' | null;

/** The chains that surfaces make when exactly these seams are closed. */
export function chainsOf(pieces: readonly Piece[], seams: readonly Seam[]): Chain[] {
  const clusters = clustersOf(pieces.length, seams);
  const contacts = clusters.contacts(pieces);
  const contactOf = ({ piece, end }: PieceEnd) => contacts[keyOf({ piece, end })] ?? null;
  const used = new Set<number>();
  const chains: Chain[] = [];
  const walk = (first: PieceEnd) => {
    const entry = contactOf(first);
    const parts: Part[] = [];
    let at: PieceEnd = first;
    for (;;) {
      used.add(at.piece);
      const piece = pieces[at.piece] as Piece;
      parts.push({ stretches: at.end === 'root' ? piece : reversed(piece) });
      const far: PieceEnd = { piece: at.piece, end: at.end === 'root' ? 'tip' : 'root' };
      const contact = contactOf(far);
      const next = contact && contact !== 'plane' && 'end' in contact ? contact.end : null;
      if (next === null || used.has(next.piece)) {
        const closed = next !== null;
        chains.push(
          chainFrom(
            parts,
            entry,
            closed ? { line: lineOf(pieces, next) } : contact,
            clusters.componentOf(first),
          ),
        );
        return;
      }
      at = next;
    }
  };
  const ends = pieces.flatMap((_, piece) => [
    { piece, end: 'root' } as const,
    { piece, end: 'tip' } as const,
  ]);
  const isLink = (end: PieceEnd) => {
    const contact = contactOf(end);
    return contact !== null && contact !== 'plane' && 'end' in contact;
  };
  // Chains start at the plane of symmetry, then at other ends; what is left runs in a ring.
  for (const starts of [
    (end: PieceEnd) => contactOf(end) === 'plane',
    (end: PieceEnd) => !isLink(end),
    () => true,
  ]) {
    for (const end of ends) if (!used.has(end.piece) && starts(end)) walk(end);
  }
  return chains;
}

/** A surface by itself: joined at its root if that lies in the plane of symmetry. */
export function chainOf(surface: LiftingSurface, index = 0): Chain {
  const joined = surface.rootMm[1] === 0;
  return {
    stretches: stretchesOf(surface, index),
    start: joined ? 'joined' : 'free',
    end: 'free',
    component: index,
  };
}

/** The chord line at a length from the chain's start, mm across the flow, with the stretch it lies in. */
export function chainLine(
  chain: Chain,
  lengthMm: number,
): { line: ChordLine; stretch: Stretch; share: number } {
  let left = lengthMm;
  const last = chain.stretches.length - 1;
  for (const [index, stretch] of chain.stretches.entries()) {
    const length = stretchLengthMm(stretch);
    if (left <= length || index === last) {
      const share = length > 0 ? Math.min(1, Math.max(0, left / length)) : 0;
      return { line: between(stretch.from, stretch.to, share), stretch, share };
    }
    left -= length;
  }
  throw new Error('a chain needs at least one stretch');
}

/** Length of a chain across the flow, mm. */
export function chainLengthMm({ stretches }: Chain): number {
  return stretches.reduce((sum, stretch) => sum + stretchLengthMm(stretch), 0);
}

interface Part {
  readonly stretches: readonly Stretch[];
}

const keyOf = ({ piece, end }: PieceEnd) => 2 * piece + (end === 'tip' ? 1 : 0);
const endOf = (key: number): PieceEnd => ({
  piece: Math.floor(key / 2),
  end: key % 2 === 1 ? 'tip' : 'root',
});
const lineOf = (pieces: readonly Piece[], { piece, end }: PieceEnd) => endLine(pieces[piece] as Piece, end);

/** Ends that closed seams bring together, and pieces that hang together. */
function clustersOf(pieceCount: number, seams: readonly Seam[]) {
  const ends = disjointSets(2 * pieceCount);
  const wholes = disjointSets(pieceCount);
  const atPlane = new Set<number>();
  for (const { a, b } of seams) {
    if (b === 'plane') atPlane.add(keyOf(a));
    else {
      ends.join(keyOf(a), keyOf(b));
      wholes.join(a.piece, b.piece);
    }
  }
  return {
    componentOf: ({ piece }: PieceEnd) => wholes.find(piece),
    contacts: (pieces: readonly Piece[]): Contact[] => {
      const contacts: Contact[] = Array.from({ length: 2 * pieceCount }, () => null);
      for (const cluster of ends.sets()) {
        const planar = cluster.find((key) => atPlane.has(key));
        // The line goes on from the end at the plane, or else from a tip to the next end; others start there.
        const hub = planar ?? cluster.find((key) => key % 2 === 1) ?? (cluster[0] as number);
        const partner = planar === undefined ? cluster.find((key) => key !== hub) : undefined;
        for (const key of cluster) contacts[key] = { line: lineOf(pieces, endOf(hub)) };
        if (planar !== undefined) contacts[hub] = 'plane';
        else if (partner === undefined) contacts[hub] = null;
        else [contacts[hub], contacts[partner]] = [{ end: endOf(partner) }, { end: endOf(hub) }];
      }
      return contacts;
    },
  };
}

function disjointSets(count: number) {
  const parents = Array.from({ length: count }, (_, index) => index);
  const find = (index: number): number => {
    let root = index;
    while (parents[root] !== root) root = parents[root] as number;
    return root;
  };
  return {
    find,
    join: (a: number, b: number) => {
      const [low, high] = [find(a), find(b)].sort((left, right) => left - right) as [number, number];
      parents[high] = low;
    },
    sets: (): number[][] => {
      const bySet = new Map<number, number[]>();
      for (let index = 0; index < count; index++) {
        bySet.set(find(index), [...(bySet.get(find(index)) ?? []), index]);
      }
      return [...bySet.values()];
    },
  };
}

function chainFrom(parts: readonly Part[], entry: Contact, exit: Contact, component: number): Chain {
  const inner = parts.reduce<Stretch[]>((line, { stretches }) => seamed(line, stretches), []);
  const [first, last] = [inner[0] as Stretch, inner.at(-1) as Stretch];
  const from = contactLine(entry, first.from);
  const to = contactLine(exit, last.to);
  const stretches = [
    ...(from && acrossMm(from, first.from) > 0
      ? [levelBridge(first, from, first.from, first.noseUpFromRad)]
      : []),
    ...inner,
    ...(to && acrossMm(last.to, to) > 0 ? [levelBridge(last, last.to, to, last.noseUpToRad)] : []),
  ];
  return { stretches, start: from ? 'joined' : 'free', end: to ? 'joined' : 'free', component };
}

/** Where a chain goes on to from an end of it; null where it is free. */
function contactLine(contact: Contact, end: ChordLine): ChordLine | null {
  if (contact === null) return null;
  if (contact !== 'plane') return 'line' in contact ? contact.line : end;
  const [x, , z] = end.leadingMm;
  return { leadingMm: [x, 0, z], chordMm: end.chordMm };
}

/** A bridge level in the aircraft's frame, whatever the cant of the surface: its twist leans it fully. */
function levelBridge(model: Stretch, from: ChordLine, to: ChordLine, noseUpRad: number): Stretch {
  return { ...bridge(model, from, to, noseUpRad), cosDihedral: 1 };
}

/** Two runs of stretches as one: the gap between them filled, a step in chord or station spread out. */
function seamed(before: Stretch[], after: readonly Stretch[]): Stretch[] {
  const [last, first] = [before.at(-1), after[0]];
  if (last === undefined || first === undefined) return [...before, ...after];
  const gapMm = acrossMm(last.to, first.from);
  const stepMm = Math.max(
    Math.abs(first.from.leadingMm[0] - last.to.leadingMm[0]),
    Math.abs(first.from.leadingMm[0] + first.from.chordMm - last.to.leadingMm[0] - last.to.chordMm),
  );
  if (gapMm + stepMm <= ROUNDING * Math.max(last.to.chordMm, first.from.chordMm))
    return [...before, ...after];
  const intoMm = Math.max(0, RAMP_PER_STEP * stepMm - gapMm) / 2;
  const cutLast = cut(last, 0, 1 - shareOf(intoMm, last));
  const cutFirst = cut(first, shareOf(intoMm, first), 1);
  return [
    ...before.slice(0, -1),
    cutLast,
    bridge(last, cutLast.to, cutFirst.from, last.noseUpToRad),
    cutFirst,
    ...after.slice(1),
  ];
}

/** At most half of a stretch is given up to a ramp. */
const shareOf = (lengthMm: number, stretch: Stretch) => Math.min(0.5, lengthMm / stretchLengthMm(stretch));

function cut(stretch: Stretch, from: number, to: number): Stretch {
  const noseUp = (share: number) =>
    stretch.noseUpFromRad + (stretch.noseUpToRad - stretch.noseUpFromRad) * share;
  return {
    ...stretch,
    from: between(stretch.from, stretch.to, from),
    to: between(stretch.from, stretch.to, to),
    noseUpFromRad: noseUp(from),
    noseUpToRad: noseUp(to),
  };
}
