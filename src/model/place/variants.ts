import type { Vec3 } from '../../engine/geometry/types';
import { itemExtent } from '../airframe/extent';
import { type ShelfPart, shelf } from '../airframe/shelf';
import { addPart, updatePart } from '../document/edit';
import type { Aircraft, Part } from '../document/types';

/** Another thing that may do a part's work: so many of one from the shelf. */
export interface Alternative {
  readonly shelfName: string;
  readonly count: 1 | 2;
}

/** An aircraft to choose from, and what is other about it in words. */
export interface Variant {
  readonly name: string;
  readonly aircraft: Aircraft;
}

/** More combinations than this are not searched. */
const MOST_VARIANTS = 8;

/** What of the shelf may stand in for a part: of its own role, and another. Nothing for one of a mirrored pair. */
export const alternativesFor = ({ role, name, twinId }: Part): readonly ShelfPart[] =>
  twinId === undefined ? shelf.filter((one) => one.role === role && one.name !== name) : [];

/** Every combination of a part as it is and of what may stand in for it, as it is first; or why there are too many. */
export function variantsOf(
  aircraft: Aircraft,
  instead: Readonly<Record<string, readonly Alternative[]>>,
): readonly Variant[] | { readonly fault: string } {
  let all: readonly Variant[] = [{ name: '', aircraft }];
  for (const [partId, alternatives] of Object.entries(instead)) {
    all = all.flatMap((one) => [one, ...alternatives.flatMap((other) => swapped(one, partId, other) ?? [])]);
  }
  return all.length > MOST_VARIANTS
    ? { fault: `Expected ${MOST_VARIANTS} combinations of alternatives at most, got ${all.length}.` }
    : all;
}

function swapped({ name, aircraft }: Variant, partId: string, other: Alternative): Variant | null {
  const part = aircraft.parts.find(({ id }) => id === partId);
  const from = shelf.find((one) => one.name === other.shelfName);
  if (!part || !from || part.twinId !== undefined) return null;
  const { inertiaGmm2: _inertia, ...rest } = part;
  const { name: otherName, shape, massG } = from;
  const first: Aircraft = {
    ...aircraft,
    parts: aircraft.parts.map((one) => (one === part ? { ...rest, name: otherName, shape, massG } : one)),
  };
  const words = `${other.count === 2 ? `two ${otherName}` : otherName} for ${part.name}`;
  const after = other.count === 2 ? withSecond(first, partId) : first;
  return { name: name ? `${name}, ${words}` : words, aircraft: after };
}

/** A second one like it, behind it: the search finds it a place. */
function withSecond(aircraft: Aircraft, partId: string): Aircraft {
  const part = aircraft.parts.find(({ id }) => id === partId)!;
  const { minMm, maxMm } = itemExtent(part);
  const [x, y, z] = part.positionMm;
  const positionMm: Vec3 = [x + maxMm[0] - minMm[0] + 1, y, z];
  const { id: _id, ...second } = part;
  const added = addPart(aircraft, { ...second, positionMm });
  return updatePart(added.aircraft, added.id, { name: `${part.name}, second` });
}
