/**
 * A copy of plain data with everything that is as it was before taken from there, so that what was worked out for those
 * very objects still holds: a document that crosses to a worker comes out as new objects throughout.
 */
export function sharedWith<T>(before: unknown, after: T): T {
  if (Object.is(before, after)) return after;
  if (typeof before !== 'object' || typeof after !== 'object' || before === null || after === null)
    return after;
  if (Array.isArray(before) !== Array.isArray(after)) return after;
  const [was, is] = [before as Readonly<Record<string, unknown>>, after as Record<string, unknown>];
  const keys = Object.keys(is);
  let same = keys.length === Object.keys(was).length;
  const found = Array.isArray(before) && Array.isArray(after) ? oldById(before) : null;
  for (const key of keys) {
    const old = found?.get(idOf(is[key])) ?? was[key];
    is[key] = sharedWith(old, is[key]);
    same &&= key in was && Object.is(was[key], is[key]);
  }
  return same ? (before as T) : after;
}

/** Each in a row of such copies, sharing with the one before it. */
export function sharingWithLast<T>(): (after: T) => T {
  let last: T | null = null;
  return (after) => {
    last = sharedWith(last, after);
    return last;
  };
}

/** Things in a list are the same ones by their ids, wherever they stand in it. */
const oldById = (list: readonly unknown[]): ReadonlyMap<unknown, unknown> =>
  new Map(list.flatMap((item) => (idOf(item) === undefined ? [] : [[idOf(item), item] as const])));

const idOf = (item: unknown): unknown =>
  typeof item === 'object' && item !== null && 'id' in item ? item.id : undefined;
