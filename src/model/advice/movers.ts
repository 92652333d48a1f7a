import type { Item } from '../document/edit';
import { shownText } from '../document/names';
import type { Aircraft, Part } from '../document/types';

/** What is moved as one. */
export interface Mover {
  readonly items: readonly Item[];
  readonly kind: 'move' | 'move-pair';
  /** One half of a pair is moved only where nothing else does it. */
  readonly halfOfPair: boolean;
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
  const pairs = items.flatMap((item, index) => {
    const twin = items.slice(index + 1).find((other) => areTwins(item, other));
    return twin ? [[item, twin] as const] : [];
  });
  const paired = new Set(pairs.flat());
  return [
    ...pairs.map((both): Mover => ({ items: both, kind: 'move-pair', halfOfPair: false })),
    ...items.map((item): Mover => ({ items: [item], kind: 'move', halfOfPair: paired.has(item) })),
  ];
}

/** How alike two parts must be to count as a pair: share of the mass, and mm. */
const ALIKE = { mass: 0.1, alongMm: 15, acrossMm: 10, upMm: 10, apartMm: 10 } as const;

function areTwins(a: Item, b: Item): boolean {
  const [[ax, ay, az], [bx, by, bz]] = [a.positionMm, b.positionMm];
  const [aG, bG] = [massOf(a), massOf(b)];
  return (
    roleOf(a) === roleOf(b) &&
    a.shape.kind === b.shape.kind &&
    Math.abs(aG - bG) <= ALIKE.mass * Math.max(aG, bG) &&
    Math.abs(ax - bx) <= ALIKE.alongMm &&
    Math.abs(az - bz) <= ALIKE.upMm &&
    Math.abs(ay + by) <= ALIKE.acrossMm &&
    Math.abs(ay - by) > ALIKE.apartMm
  );
}

const massOf = (item: Item) => ('massG' in item ? item.massG : item.emptyMassG);
const roleOf = (item: Item) => ('role' in item ? item.role : 'tank');

/** “Camera”, or “Pack, left” and “Pack, right”. */
export const moverName = ({ items }: Mover): string =>
  items.map(({ name }) => `“${shownText(name)}”`).join(' and ');
