import { pick, type Step, saysSame } from './difference';
import { removeBay } from './fitEdits';
import { withoutItem } from './removal';
import type { Aircraft, Part, TankItem } from './types';
import {
  type EditScope,
  isVaried,
  LEAVABLE,
  sharedAircraft,
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
  const left = gone.reduce(withoutItem, shared);
  return withShared(next, gone.length > 0 ? standingAs(left, sharedAircraft(before)) : left, list);
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
  const parted = gone.length > 0;
  const lists = {
    structure: asBefore(old.structure, fresh.structure, gone, (entry) => entry),
    tanks: asBefore(old.tanks, fresh.tanks, gone, (entry, was) => withVariedOf(entry, was, parted)),
    parts: asBefore(old.parts, fresh.parts, gone, (entry, was) => withVariedOf(entry, was, parted)),
  };
  // What went with a thing, such as its leads, is there still for the variants that have it.
  return { ...(parted ? old : fresh), ...lists };
}

/** A list with what may differ as it was, and with what was taken out of this variant where it stood. */
function asBefore<T extends { readonly id: string }>(
  old: readonly T[],
  fresh: readonly T[],
  gone: readonly string[],
  withVaried: (entry: T, before: T) => T,
): readonly T[] {
  const was = new Map(old.map((entry) => [entry.id, entry]));
  const back = fresh.map((entry) => {
    const before = was.get(entry.id);
    return before ? withVaried(entry, before) : entry;
  });
  if (gone.length === 0) return back;
  const there = new Set(back.map(({ id }) => id));
  const restored = old.filter(({ id }) => gone.includes(id) && !there.has(id));
  return inOrderOf([...back, ...restored], old);
}

/** A list in the order of another; what that does not have stays behind it. */
function inOrderOf<T extends { readonly id: string }>(list: readonly T[], other: readonly T[]): readonly T[] {
  const place = new Map(other.map(({ id }, at) => [id, at]));
  const at = ({ id }: T) => place.get(id) ?? place.size;
  return [...list].sort((a, b) => at(a) - at(b));
}

const standingAs = (aircraft: Aircraft, other: Aircraft): Aircraft => ({
  ...aircraft,
  structure: inOrderOf(aircraft.structure, other.structure),
  tanks: inOrderOf(aircraft.tanks, other.tanks),
  parts: inOrderOf(aircraft.parts, other.parts),
});

/**
 * An entry with all that may differ as it was. `parted`: something was taken out, so that what feeds it or is its twin
 * does so still for the variants that have it.
 */
function withVariedOf<T extends Part | TankItem>(entry: T, before: T, parted: boolean): T {
  const kept = (field: string) => isVaried(field) || (parted && (field === 'feeds' || field === 'twinId'));
  const fields = Object.keys({ ...entry, ...before }).filter(kept);
  const next: Record<string, unknown> = { ...entry, ...pick(before as Loose, fields) };
  for (const field of fields) if (!(field in before)) delete next[field];
  return { ...pick(next, Object.keys(before)), ...next } as T;
}

/** The steps to what is shared, without those about what an edit has changed for all. */
function stillShared(before: Aircraft, next: Aircraft, gone: readonly string[]): readonly Step[] {
  const steps = before.variants?.shared ?? [];
  if (gone.length > 0) return steps;
  const [was, is] = [before as Loose, next as Loose];
  return steps.flatMap((step): readonly Step[] => {
    if (saysSame(was[step.in], is[step.in])) return [step];
    if (step.id === undefined) return [];
    if (!step.set && !step.unset) return [step];
    const [a, b] = [was, is].map((aircraft) => entryOf(aircraft[step.in], step.id));
    const stays = (field: string) =>
      ((step.in === 'parts' || step.in === 'tanks') && isVaried(field)) || saysSame(a?.[field], b?.[field]);
    const set = pick((step.set ?? {}) as Loose, Object.keys(step.set ?? {}).filter(stays));
    const unset = step.unset?.filter(stays) ?? [];
    if (Object.keys(set).length + unset.length === 0) return [];
    return [
      {
        in: step.in,
        id: step.id,
        set,
        ...(unset.length > 0 && { unset }),
        ...(step.keys && { keys: step.keys }),
      },
    ];
  });
}

const entryOf = (list: unknown, id: string | undefined): Entry | undefined =>
  Array.isArray(list) ? list.find((entry) => entry?.id === id) : undefined;
