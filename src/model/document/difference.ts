import type { Aircraft } from './types';

/** A step from one aircraft to another; what a file keeps under `variants.shared`. */
export type Step = NonNullable<Aircraft['variants']>['shared'][number];

type Entry = Readonly<Record<string, unknown>> & { readonly id: string };
type Loose = Readonly<Record<string, unknown>>;

/** The same said whatever the order of keys. */
export const meansSame = (a: unknown, b: unknown): boolean => a === b || saysSame(sorted(a), sorted(b));

const sorted = (value: unknown): unknown => {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(sorted);
  const members = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return members.map(([key, member]) => [key, sorted(member)]);
};

/** Never part of a difference: what kind of file it is, and the variants themselves. */
const apart: readonly string[] = ['format', 'version', 'variants'];

/** Whether two values of a document say the same, the order of their keys included. */
export const saysSame = (a: unknown, b: unknown): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b);

/** A list of things that are known by their ids. */
const entriesOf = (value: unknown): readonly Entry[] | null =>
  Array.isArray(value) && value.every((entry) => typeof entry?.id === 'string') ? value : null;

/** The steps from one aircraft to another. The common entries of a list must stand in the same order in both. */
export function difference(from: Aircraft, to: Aircraft): readonly Step[] {
  const [a, b] = [from as Loose, to as Loose];
  return Object.keys({ ...a, ...b }).flatMap((key): readonly Step[] => {
    if (apart.includes(key) || saysSame(a[key], b[key])) return [];
    const [before, after] = [entriesOf(a[key]), entriesOf(b[key])];
    if (!before || !after) return [{ in: key, ...(b[key] !== undefined && { value: b[key] }) }];
    return ofLists(key, before, after);
  });
}

function ofLists(key: string, before: readonly Entry[], after: readonly Entry[]): readonly Step[] {
  const [old, fresh] = [before, after].map((list) => new Map(list.map((entry) => [entry.id, entry])));
  const drops = before.flatMap(({ id }): Step[] => (fresh!.has(id) ? [] : [{ in: key, id, drop: true }]));
  const others = after.flatMap((entry, at): Step[] => {
    const was = old!.get(entry.id);
    if (!was) return [{ in: key, id: entry.id, at, put: entry }];
    return saysSame(was, entry) ? [] : [{ in: key, id: entry.id, ...entryChange(was, entry) }];
  });
  return [...drops, ...others];
}

function entryChange(was: Entry, entry: Entry): Pick<Step, 'set' | 'unset' | 'keys'> {
  const changed = Object.keys(entry).filter((field) => !saysSame(was[field], entry[field]));
  const unset = Object.keys(was).filter((field) => !(field in entry));
  const change = { set: pick(entry, changed), ...(unset.length > 0 && { unset }) };
  const keys = Object.keys(entry);
  return saysSame(Object.keys(changedEntry(was, change)), keys) ? change : { ...change, keys };
}

/** An entry after a change of its fields; those named in `keys` first and in that order. */
function changedEntry(entry: Loose, { set, unset, keys }: Pick<Step, 'set' | 'unset' | 'keys'>): Loose {
  const next: Record<string, unknown> = { ...entry, ...set };
  for (const field of unset ?? []) if (field !== 'id') delete next[field];
  return keys ? { ...pick(next, keys), ...next } : next;
}

export const pick = (entry: Loose, fields: readonly string[]): Record<string, unknown> =>
  Object.fromEntries(fields.filter((field) => field in entry).map((field) => [field, entry[field]]));

/** An aircraft after such steps. A step that no longer applies, for what it is about is gone, is passed over. */
export function patched(aircraft: Aircraft, steps: readonly Step[]): Aircraft {
  const next: Record<string, unknown> = { ...aircraft };
  for (const step of steps) {
    if (apart.includes(step.in)) continue;
    if (step.id === undefined) {
      if (step.value === undefined) delete next[step.in];
      else next[step.in] = step.value;
      continue;
    }
    const list = entriesOf(next[step.in]);
    if (list) next[step.in] = listAfter(list, step.id, step);
  }
  return next as Aircraft;
}

function listAfter(list: readonly Entry[], id: string, step: Step): readonly Entry[] {
  const { at = list.length, put, set, unset, drop } = step;
  const there = list.some((entry) => entry.id === id);
  if (drop) return there ? list.filter((entry) => entry.id !== id) : list;
  if (put) return there ? list : [...list.slice(0, at), { ...put, id } as Entry, ...list.slice(at)];
  if (!there || !(set ?? unset)) return list;
  return list.map((entry) => (entry.id === id ? ({ ...changedEntry(entry, step), id } as Entry) : entry));
}
