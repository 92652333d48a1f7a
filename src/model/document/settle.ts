import { pick, type Step, saysSame } from './difference';
import { removeBay } from './fitEdits';
import { withoutItem } from './removal';
import type { Aircraft } from './types';
import {
  type EditScope,
  LEAVABLE,
  sharedAircraft,
  VARIED,
  type Variant,
  variantWithout,
  withShared,
} from './variants';

type Loose = Readonly<Record<string, unknown>>;
type Entry = Loose & { readonly id: string };

/**
 * An edit of the variant on the bench, settled with the others. `this`: what is shared stays as it was wherever variants
 * may differ (where things stand, their sizes and masses, what is aboard); all else of the edit is for all. `all`: for
 * every variant; what this one has otherwise already stays its own.
 */
export const settled = (before: Aircraft, next: Aircraft, scope: EditScope): Aircraft =>
  before.variants && next.variants ? bound(before, settledItems(before, next, scope)) : next;

function settledItems(before: Aircraft, next: Aircraft, scope: EditScope): Aircraft {
  const { variants } = before;
  if (!variants || !next.variants) return next;
  const [was, is] = [thingsOf(before), thingsOf(next)];
  const gone = [...was].filter((id) => !is.has(id));
  const added = [...is].filter((id) => !was.has(id));
  if (scope === 'this') {
    const list = variants.list.map((each) =>
      each.id === variants.chosenId ? each : leavingOut(each, added),
    );
    return withShared({ ...next, variants }, sharedAfter(before, next, gone), list);
  }
  const shared = sharedAircraft({
    ...next,
    variants: { ...next.variants, shared: stillShared(before, next, gone) },
  });
  const list = next.variants.list.map((each) => variantWithout(each, new Set(gone)));
  return withShared(next, gone.reduce(withoutItem, shared), list);
}

/** Parts that this variant leaves out are bound to no bay that an edit took away. */
function bound(before: Aircraft, next: Aircraft): Aircraft {
  const { variants } = next;
  const gone = (before.bays ?? []).filter(({ id }) => !next.bays?.some((bay) => bay.id === id));
  if (!variants || gone.length === 0) return next;
  const shared = gone.reduce((aircraft, { id }) => removeBay(aircraft, id), sharedAircraft(next));
  return withShared(next, shared, variants.list);
}

const thingsOf = (aircraft: Aircraft): ReadonlySet<string> =>
  new Set(LEAVABLE.flatMap((key) => aircraft[key].map(({ id }) => id)));

const leavingOut = (variant: Variant, ids: readonly string[]): Variant =>
  ids.length === 0 ? variant : { ...variant, without: [...(variant.without ?? []), ...ids] };

/** What is shared after an edit for this variant only. */
function sharedAfter(before: Aircraft, next: Aircraft, gone: readonly string[]): Aircraft {
  const { variants } = before;
  if (!variants) return next;
  const old = sharedAircraft(before);
  const shared = stillShared(before, next, gone);
  const fresh = sharedAircraft({ ...next, variants: { ...variants, shared } });
  // A tank that fed what was taken out feeds the outlet in this variant only.
  const fields = gone.length > 0 ? [...VARIED, 'feeds'] : VARIED;
  const lists = Object.fromEntries(
    LEAVABLE.map((key) => [key, asBefore(old[key], fresh[key], gone, key === 'structure' ? [] : fields)]),
  );
  // What went with a thing, such as its leads, is there still for the variants that have it.
  return { ...(gone.length > 0 ? old : fresh), ...lists } as Aircraft;
}

/** A list with what may differ as it was, and with what was taken out of this variant where it stood. */
function asBefore(
  old: readonly { readonly id: string }[],
  fresh: readonly { readonly id: string }[],
  gone: readonly string[],
  fields: readonly string[],
): readonly { readonly id: string }[] {
  const was = new Map(old.map((entry) => [entry.id, entry]));
  const back = fresh.map((entry) => {
    const before = was.get(entry.id);
    return before ? { ...entry, ...pick(before as Entry, fields) } : entry;
  });
  const there = new Set(back.map(({ id }) => id));
  for (const [at, entry] of old.entries()) {
    if (gone.includes(entry.id) && !there.has(entry.id)) back.splice(at, 0, entry);
  }
  return back;
}

/** The steps to what is shared, without those about what an edit has changed for all. */
function stillShared(before: Aircraft, next: Aircraft, gone: readonly string[]): readonly Step[] {
  const steps = before.variants?.shared ?? [];
  if (gone.length > 0) return steps;
  const [was, is] = [before as Loose, next as Loose];
  return steps.flatMap((step): readonly Step[] => {
    if (saysSame(was[step.in], is[step.in])) return [step];
    if (step.id === undefined) return [];
    if (!step.set) return [step];
    const [a, b] = [was, is].map((aircraft) => entryOf(aircraft[step.in], step.id));
    const varied = (field: string) =>
      (step.in === 'parts' || step.in === 'tanks') && VARIED.some((each) => each === field);
    const left = Object.keys(step.set).filter((field) => varied(field) || saysSame(a?.[field], b?.[field]));
    return left.length > 0 ? [{ ...step, set: pick(step.set as Loose, left) }] : [];
  });
}

const entryOf = (list: unknown, id: string | undefined): Entry | undefined =>
  Array.isArray(list) ? list.find((entry) => entry?.id === id) : undefined;
