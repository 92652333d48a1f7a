import type { Aircraft } from './types';

/**
 * A list with those of the named things that it has standing in the order in which they are named, in the places that they
 * had between them. The very same list when nothing moves.
 */
function reordered<T extends { readonly id: string }>(
  list: readonly T[],
  ids: readonly string[],
): readonly T[] {
  const named = ids.flatMap((id) => list.find((thing) => thing.id === id) ?? []);
  const isNamed = new Set(named);
  let taken = 0;
  const next = list.map((thing) => (isNamed.has(thing) ? (named[taken++] ?? thing) : thing));
  return next.every((thing, i) => thing === list[i]) ? list : next;
}

/** Puts things of one kind (parts, tanks, structure, leads) in an order in the file; nothing else of them changes. */
export function listInOrder(aircraft: Aircraft, ids: readonly string[]): Aircraft {
  const { parts, tanks, structure, leads } = aircraft;
  const next = {
    parts: reordered(parts, ids),
    tanks: reordered(tanks, ids),
    structure: reordered(structure, ids),
    ...(leads && { leads: reordered(leads, ids) }),
  };
  const same =
    next.parts === parts && next.tanks === tanks && next.structure === structure && next.leads === leads;
  return same ? aircraft : { ...aircraft, ...next };
}

/** The ids with one of them moved to stand before another, or last where that is null. */
export function movedBefore(ids: readonly string[], id: string, beforeId: string | null): readonly string[] {
  if (id === beforeId) return ids;
  const others = ids.filter((other) => other !== id);
  const at = beforeId === null ? others.length : others.indexOf(beforeId);
  return at < 0 || others.length === ids.length ? ids : [...others.slice(0, at), id, ...others.slice(at)];
}
