import type { Vec3 } from '../../engine/geometry/types';
import { commonCapacitiesMah } from '../../engine/power/cells';
import { itemExtent } from '../airframe/extent';
import { type ShelfPart, shelf } from '../airframe/shelf';
import { addPart, updatePart } from '../document/edit';
import type { Aircraft, Part } from '../document/types';
import { packTrial, withCapacity } from '../power/otherPacks';
import { withStandIn } from './standIn';

/** Another thing that may do a part's work: so many of one from the shelf, or a pack of the same cells with another capacity. */
export type Alternative =
  | { readonly shelfName: string; readonly count: 1 | 2 }
  | { readonly capacityMah: number };

/** An aircraft to choose from, and what is other about it in words. */
export interface Variant {
  readonly name: string;
  readonly aircraft: Aircraft;
}

/** More combinations than this are not searched. */
const MOST_VARIANTS = 8;

/**
 * What of the shelf may stand in for a part: of its own role, and another. Nothing for one of a mirrored pair, and nothing for
 * a pack that is wired, which `otherPacks` is for: of a shelf's pack nobody knows whether it does what is asked of it.
 */
export const alternativesFor = ({ role, name, twinId, power }: Part): readonly ShelfPart[] =>
  twinId === undefined && !power?.pack
    ? shelf.filter((thing) => thing.role === role && thing.name !== name)
    : [];

/** So many packs beside the one aboard are offered. */
const MOST_PACKS = 3;

/** Packs that may stand in for one that is wired and suffice for the flight: of the same cells, those nearest to it in capacity, the smallest first. */
export function otherPacks(aircraft: Aircraft, { id, power, twinId }: Part): readonly OtherPack[] {
  const pack = power?.pack;
  if (!pack || twinId !== undefined) return [];
  const trial = packTrial(aircraft, id);
  const off = (mah: number) => Math.abs(Math.log(mah / pack.capacityMah));
  const nearest = commonCapacitiesMah
    .filter((mah) => mah !== pack.capacityMah)
    .toSorted((a, b) => off(a) - off(b));
  const found: number[] = [];
  for (const mah of nearest) if (found.length < MOST_PACKS && trial?.does(mah)) found.push(mah);
  return found
    .toSorted((a, b) => a - b)
    .flatMap((capacityMah) => {
      const part = withOtherPack(aircraft, id, capacityMah)?.parts.find((other) => other.id === id);
      return part ? [{ capacityMah, massG: part.massG }] : [];
    });
}

/** A pack that may stand in for another: typical, by what that one weighs, g. */
export interface OtherPack {
  readonly capacityMah: number;
  readonly massG: number;
}

function withOtherPack(aircraft: Aircraft, id: string, capacityMah: number): Aircraft | null {
  const part = aircraft.parts.find((other) => other.id === id);
  const pack = part?.power?.pack;
  return part && pack ? withCapacity(aircraft, part, pack, capacityMah) : null;
}

/** Every combination of a part as it is and of what may stand in for it, as it is first; or why there are too many. */
export function variantsOf(
  aircraft: Aircraft,
  instead: Readonly<Record<string, readonly Alternative[]>>,
): readonly Variant[] | { readonly fault: string } {
  let all: readonly Variant[] = [{ name: '', aircraft }];
  for (const [partId, alternatives] of Object.entries(instead)) {
    all = all.flatMap((each) => [
      each,
      ...alternatives.flatMap((other) => swapped(each, partId, other) ?? []),
    ]);
  }
  return all.length > MOST_VARIANTS
    ? { fault: `Expected ${MOST_VARIANTS} combinations of alternatives at most, got ${all.length}.` }
    : all;
}

function swapped({ name, aircraft }: Variant, partId: string, other: Alternative): Variant | null {
  const part = aircraft.parts.find(({ id }) => id === partId);
  if (!part || part.twinId !== undefined) return null;
  const named = (words: string, after: Aircraft): Variant => ({
    name: [name, `${words} for ${part.name}`].filter(Boolean).join(', '),
    aircraft: after,
  });
  if ('capacityMah' in other) {
    const after = withOtherPack(aircraft, partId, other.capacityMah);
    return after && named(`${other.capacityMah} mAh`, after);
  }
  const from = shelf.find((thing) => thing.name === other.shelfName);
  if (!from) return null;
  const first = withStandIn(aircraft, part, from);
  return other.count === 2 ? named(`two ${from.name}`, withSecond(first, partId)) : named(from.name, first);
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
