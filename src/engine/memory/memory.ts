/**
 * Answers that are worked out once. Everything given is taken never to change in place, as documents, shapes and tables
 * do not. An answer lives as long as the objects that it is about; one that throws is not kept.
 */

/** Works an answer out once for each object. */
export function perObject<K extends object, V>(work: (key: K) => V): (key: K) => V {
  const answers = new WeakMap<K, V>();
  return (key) => {
    const before = answers.get(key);
    if (before !== undefined || answers.has(key)) return before as V;
    const answer = work(key);
    answers.set(key, answer);
    return answer;
  };
}

/** Works an answer out once for each list of keys; the first is an object, the others may be of any kind. */
export function perObjects<K extends readonly [object, ...unknown[]], V>(
  work: (...keys: K) => V,
): (...keys: K) => V {
  const root = branch<V>();
  return (...keys) => {
    let at = root;
    for (const key of keys) at = next(at, key);
    at.answer ??= { value: work(...keys) };
    return at.answer.value;
  };
}

interface Branch<V> {
  answer: { readonly value: V } | null;
  objects: WeakMap<object, Branch<V>> | null;
  plain: Map<unknown, Branch<V>> | null;
}

const branch = <V>(): Branch<V> => ({ answer: null, objects: null, plain: null });

function next<V>(from: Branch<V>, key: unknown): Branch<V> {
  if (typeof key === 'object' && key !== null) {
    from.objects ??= new WeakMap();
    return stepTo(from.objects, key);
  }
  from.plain ??= new Map();
  return stepTo(from.plain, key);
}

interface Branches<K, V> {
  get(key: K): Branch<V> | undefined;
  set(key: K, to: Branch<V>): unknown;
}

function stepTo<K, V>(branches: Branches<K, V>, key: K): Branch<V> {
  let to = branches.get(key);
  if (!to) {
    to = branch();
    branches.set(key, to);
  }
  return to;
}

/** The answer for two objects in either order: worked out for one order, and turned round for the other. */
export function perEitherPair<K extends object, V>(
  work: (a: K, b: K) => V,
  turnedRound: (answer: V) => V,
): (a: K, b: K) => V {
  let latest = 0;
  const serialOf = perObject<K, number>(() => {
    latest += 1;
    return latest;
  });
  const straight = perObjects(work);
  const back = perObjects((a: K, b: K) => turnedRound(straight(b, a)));
  return (a, b) => (serialOf(a) <= serialOf(b) ? straight(a, b) : back(a, b));
}

/** Keeps the last answer alone, for as long as it is asked with the very same things. */
export function lastOnly<A extends readonly unknown[], V>(work: (...asked: A) => V): (...asked: A) => V {
  let last: { readonly asked: A; readonly answer: V } | null = null;
  return (...asked) => {
    if (!last || !sameList(last.asked, asked)) last = { asked, answer: work(...asked) };
    return last.answer;
  };
}

/** Keeps the last answer for each object, for as long as the rest of what is asked stays the same. */
export function lastPerObject<K extends object, A extends readonly unknown[], V>(
  work: (key: K, ...rest: A) => V,
  same: (before: A, now: A) => boolean = sameList,
): (key: K, ...rest: A) => V {
  const lasts = new WeakMap<K, { readonly rest: A; readonly answer: V }>();
  return (key, ...rest) => {
    const last = lasts.get(key);
    if (last && same(last.rest, rest)) return last.answer;
    const answer = work(key, ...rest);
    lasts.set(key, { rest, answer });
    return answer;
  };
}

/** What came from elsewhere and is to be found again with the object that it is about. */
export const notesOn = <K extends object, V>(): Pick<WeakMap<K, V>, 'get' | 'set'> => new WeakMap<K, V>();

/** Whether two lists hold the very same things in the same order. */
export const sameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((thing, i) => Object.is(thing, b[i]));
