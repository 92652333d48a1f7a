import type { Aircraft } from '../document/types';

/** A step that changes so many things at once is worth a revision of what was before. */
export const MANY_THINGS = 4;

/**
 * How many things a step changed, added or took away. Things that are the very same are taken as unchanged. A document that
 * a fault has broken counts as empty: history is kept all the same.
 */
export function thingsChanged(before: Aircraft, after: Aircraft): number {
  const lists = ({ structure, tanks, parts }: Aircraft): readonly object[] => [
    ...(structure ?? []),
    ...(tanks ?? []),
    ...(parts ?? []),
  ];
  const [was, is] = [new Set(lists(before)), lists(after)];
  const fresh = is.filter((thing) => !was.has(thing)).length;
  return Math.max(fresh, was.size - (is.length - fresh));
}
