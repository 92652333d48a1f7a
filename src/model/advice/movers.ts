import type { Item } from '../document/edit';
import { shownText } from '../document/names';
import { standMirrored } from '../document/twins';
import type { Aircraft, Part } from '../document/types';

/** What is moved as one. */
export interface Mover {
  readonly items: readonly Item[];
  readonly kind: 'move' | 'move-pair';
  /** One half of a pair is moved only where nothing else does it. */
  readonly halfOfPair: boolean;
  /** A mirrored pair: what is done to the first is done to both. */
  readonly linked?: boolean;
}

/** Things made to be moved: useful mass first, then what carries nothing but itself. */
const MOVABLE = new Set<Part['role']>(['energy', 'payload', 'radio', 'ballast', 'other']);

const isLoose = ({ locked, massG }: Part) => !locked && massG > 0;

/** Every part made to be moved, alone, and every pair of them that stands mirrored, together. */
export const moversOf = ({ parts }: Aircraft): readonly Mover[] =>
  withPairs(parts.filter((part) => isLoose(part) && MOVABLE.has(part.role)));

/** The other parts that are not locked, servos and pumps say: moved only before lead is added. */
export const otherMovers = ({ parts }: Aircraft): readonly Mover[] =>
  withPairs(parts.filter((part) => isLoose(part) && !MOVABLE.has(part.role)));

/** The tanks that are not locked, of a pair both: moved only where the burn alone is wider than the band. */
export const tankMovers = ({ tanks }: Aircraft): readonly Mover[] =>
  withPairs(tanks.filter(({ locked }) => !locked)).filter(({ halfOfPair }) => !halfOfPair);

function withPairs(items: readonly Item[]): readonly Mover[] {
  const linked = items.flatMap((item, index) => {
    const twin = items.slice(index + 1).find(({ id }) => id === item.twinId);
    return twin ? [[item, twin] as const] : [];
  });
  // What is in a pair is never moved without the other one.
  const free = items.filter(({ twinId }) => twinId === undefined);
  const pairs = free.flatMap((item, index) => {
    const twin = free.slice(index + 1).find((other) => standMirrored(item, other));
    return twin ? [[item, twin] as const] : [];
  });
  const paired = new Set(pairs.flat());
  return [
    ...linked.map((both): Mover => ({ items: both, kind: 'move-pair', halfOfPair: false, linked: true })),
    ...pairs.map((both): Mover => ({ items: both, kind: 'move-pair', halfOfPair: false })),
    ...free.map((item): Mover => ({ items: [item], kind: 'move', halfOfPair: paired.has(item) })),
  ];
}

/** “Camera”, or “Pack, left” and “Pack, right”. */
export const moverName = ({ items }: Mover): string =>
  items.map(({ name }) => `“${shownText(name)}”`).join(' and ');
