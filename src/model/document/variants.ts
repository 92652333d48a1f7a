import { difference, patched, type Step, saysSame } from './difference';
import { withoutItem } from './removal';
import type { Aircraft, Part, TankItem } from './types';

/**
 * Variants of one aircraft. One of them stands in the document, as an aircraft like any other, so that nothing else has to
 * know of them. The others are kept as what they leave out and what is otherwise about parts and tanks, held against
 * what all share; `variants.shared` are the steps from what stands there to that.
 */
export type Variants = NonNullable<Aircraft['variants']>;
export type Variant = Variants['list'][number];
type Change = NonNullable<Variant['changes']>[number];

/** For whom an edit is: for the variant on the bench only, or for all. */
export type EditScope = 'this' | 'all';

/** What may be otherwise about a part or tank; true of what it need not say. The compiler asks about a new one. */
const varied: Readonly<Record<Exclude<keyof Change, 'of'>, boolean>> = {
  positionMm: false,
  yawDeg: false,
  pitchDeg: false,
  rollDeg: false,
  shape: false,
  massG: false,
  emptyMassG: false,
  startMl: false,
  plusMinusG: true,
  plusMinusMm: true,
  inertiaGmm2: true,
  massFrom: true,
  sizeFrom: true,
  weighedOn: true,
  power: true,
};

export const isVaried = (field: string): field is keyof typeof varied => Object.hasOwn(varied, field);

/** The lists of things that a variant may leave out. */
export const LEAVABLE = ['structure', 'tanks', 'parts'] as const;

const NONE: readonly Variant[] = [];

/** In the order in which they were added; empty for an aircraft without. */
export const variantsOf = ({ variants }: Aircraft): readonly Variant[] => variants?.list ?? NONE;

/** The variant on the bench; null for an aircraft without any. */
export const chosenVariant = ({ variants }: Aircraft): Variant | null =>
  variants?.list.find(({ id }) => id === variants.chosenId) ?? null;

/** What the aircraft is called on paper: its name, and that of its variant. */
export function variantName(aircraft: Aircraft): string {
  const chosen = chosenVariant(aircraft);
  return chosen ? `${aircraft.name}, ${chosen.name}` : aircraft.name;
}

/** What all variants share: everything that any of them has aboard. The aircraft itself where it has none. */
export const sharedAircraft = (aircraft: Aircraft): Aircraft =>
  aircraft.variants ? patched(aircraft, aircraft.variants.shared) : aircraft;

/** The aircraft with what its variants share given anew, and what they say in the order of that. */
export function withShared(aircraft: Aircraft, shared: Aircraft, list: readonly Variant[]): Aircraft {
  const { variants } = aircraft;
  if (!variants) return aircraft;
  const place = new Map(idsOf(shared).map((id, at) => [id, at]));
  const at = (id: string) => place.get(id) ?? place.size;
  const inOrder = list.map((variant) => {
    if (!variant.without && !variant.changes) return variant;
    // What has become as all share it is no difference any more, whether or not the variant is chosen meanwhile.
    const { without, changes } = variantFrom(shared, asVariant(shared, variant));
    return {
      ...unsaid(variant),
      ...(without && { without: [...without].sort((a, b) => at(a) - at(b)) }),
      ...(changes && { changes: [...changes].sort((a, b) => at(a.of) - at(b.of)) }),
    };
  });
  return { ...aircraft, variants: { ...variants, list: inOrder, shared: difference(aircraft, shared) } };
}

const idsOf = (aircraft: Aircraft): readonly string[] =>
  LEAVABLE.flatMap((key) => aircraft[key].map(({ id }) => id));

/**
 * What one aircraft leaves out and has otherwise than another, as a variant says it. What only follows from leaving
 * something out, such as that it feeds nothing, is not said: it comes back with the thing.
 */
export function variantFrom(shared: Aircraft, shown: Aircraft): Pick<Variant, 'without' | 'changes'> {
  const there = new Set(idsOf(shown));
  const without = idsOf(shared).filter((id) => !there.has(id));
  const left = without.reduce(withoutItem, shared);
  const was = new Map([...left.tanks, ...left.parts].map((item) => [item.id, item]));
  const changes = [...shown.tanks, ...shown.parts].flatMap((item) => {
    const old = was.get(item.id);
    const change = old && fieldsFrom(old, item);
    return change && Object.keys(change).length > 0 ? [{ of: item.id, ...change }] : [];
  });
  return { ...(without.length > 0 && { without }), ...(changes.length > 0 && { changes }) };
}

/** What is otherwise of what may be; null for what is not said any more. */
function fieldsFrom(old: Part | TankItem, item: Part | TankItem): Record<string, unknown> {
  const [was, is] = [old, item].map((each): Readonly<Record<string, unknown>> => ({ ...each }));
  const fields = Object.keys({ ...is, ...was }).filter(
    (field) => isVaried(field) && !saysSame(was![field], is![field]),
  );
  return Object.fromEntries(fields.map((field) => [field, is![field] ?? null]));
}

/** A part or tank with what a variant says of it. */
export function withFields<T extends Part | TankItem>(item: T, said: Readonly<Record<string, unknown>>): T {
  const next: Record<string, unknown> = { ...item };
  for (const [field, value] of Object.entries(said)) {
    if (!isVaried(field)) continue;
    if (value === null && varied[field]) delete next[field];
    else next[field] = value;
  }
  return next as T;
}

/** What is shared, with what a variant leaves out gone and what it has otherwise so. */
export function asVariant(shared: Aircraft, { without = [], changes = [] }: Variant): Aircraft {
  const left = without.reduce(withoutItem, shared);
  if (changes.length === 0) return left;
  const byId = new Map(changes.map((change) => [change.of, change]));
  const changed = <T extends Part | TankItem>(item: T): T => {
    const change = byId.get(item.id);
    return change ? withFields(item, change) : item;
  };
  return { ...left, tanks: left.tanks.map(changed), parts: left.parts.map(changed) };
}

/** Puts another of its variants in the document. */
export function chooseVariant(aircraft: Aircraft, id: string): Aircraft {
  const { variants } = aircraft;
  const wanted = variants?.list.find((each) => each.id === id);
  if (!variants || !wanted || id === variants.chosenId) return aircraft;
  const shared = sharedAircraft(aircraft);
  const shown = asVariant(shared, wanted);
  const list = variants.list.map((each) => {
    if (each === wanted) return unsaid(each);
    return each.id === variants.chosenId ? { ...unsaid(each), ...variantFrom(shared, aircraft) } : each;
  });
  return { ...shown, variants: { ...variants, chosenId: id, list, shared: difference(shown, shared) } };
}

/** A variant without what it differs in, as it is listed while it stands in the document. */
export const unsaid = ({ without: _w, changes: _c, ...named }: Variant): Variant => named;

/** Each variant as an aircraft of its own, the one on the bench as it stands. None for an aircraft without variants. */
export function eachVariant(
  aircraft: Aircraft,
): readonly { readonly variant: Variant; readonly aircraft: Aircraft }[] {
  return variantsOf(aircraft).map((variant) => ({ variant, aircraft: chooseVariant(aircraft, variant.id) }));
}

/** Whether what a variant says is about a thing; a variant forgets what is gone for all. */
export function variantWithout({ without, changes, ...named }: Variant, gone: ReadonlySet<string>): Variant {
  const left = without?.filter((id) => !gone.has(id)) ?? [];
  const kept = (changes ?? []).filter(({ of }) => !gone.has(of)).map((change) => unfedBy(change, gone));
  return { ...named, ...(left.length > 0 && { without: left }), ...(kept.length > 0 && { changes: kept }) };
}

/** What a variant says of a part, without a feeder that is gone. */
function unfedBy(change: Change, gone: ReadonlySet<string>): Change {
  const { power } = change;
  if (!power?.fedBy?.some(({ from }) => gone.has(from))) return change;
  return { ...change, power: { ...power, fedBy: power.fedBy.filter(({ from }) => !gone.has(from)) } };
}

/**
 * Takes something out for every variant: from what stands in the document, from what is shared, and from what the others
 * say of it.
 */
export function withoutForAll(aircraft: Aircraft, id: string): Aircraft {
  const left = withoutItem(aircraft, id);
  if (!aircraft.variants) return left;
  const gone = new Set([id]);
  const list = aircraft.variants.list.map((each) => variantWithout(each, gone));
  return withShared(left, withoutItem(sharedAircraft(aircraft), id), list);
}

export type { Step };
