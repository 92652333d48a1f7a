import { freeIdAmong } from './ids';
import { withoutItem } from './removal';
import type { Aircraft } from './types';
import {
  asVariant,
  chooseVariant,
  chosenVariant,
  sharedAircraft,
  type Variant,
  variantFrom,
  variantsOf,
  withShared,
} from './variants';

const ids = (list: readonly Variant[]): ReadonlySet<string> => new Set(list.map(({ id }) => id));

/** What the aircraft as it stood is called once there is another beside it. */
export const FIRST_NAME = 'As built';

/** A further variant, alike to the one on the bench, and on the bench from now on. The first brings a name for what stood there. */
export function addVariant(aircraft: Aircraft, name: string): Aircraft {
  const { variants } = aircraft;
  if (!variants) {
    const first: Variant = { id: freeIdAmong(new Set(), FIRST_NAME, 'variant'), name: FIRST_NAME };
    const second: Variant = { id: freeIdAmong(ids([first]), name, 'variant'), name };
    return { ...aircraft, variants: { chosenId: second.id, list: [first, second], shared: [] } };
  }
  const like = variantFrom(sharedAircraft(aircraft), aircraft);
  const fresh: Variant = { id: freeIdAmong(ids(variants.list), name, 'variant'), name };
  const list = [
    ...variants.list.map((each) => (each.id === variants.chosenId ? { ...each, ...like } : each)),
    fresh,
  ];
  return { ...aircraft, variants: { ...variants, chosenId: fresh.id, list } };
}

export function renameVariant(aircraft: Aircraft, id: string, name: string): Aircraft {
  const { variants } = aircraft;
  if (!variants) return aircraft;
  return {
    ...aircraft,
    variants: { ...variants, list: variants.list.map((each) => (each.id === id ? { ...each, name } : each)) },
  };
}

/**
 * Takes a variant away; of the one on the bench its neighbour takes the place. With one left the aircraft is that one and
 * has no variants; things that no variant has aboard any more are gone.
 */
export function removeVariant(aircraft: Aircraft, id: string): Aircraft {
  const list = variantsOf(aircraft);
  const at = list.findIndex((each) => each.id === id);
  const neighbour = list[at + 1] ?? list[at - 1];
  if (at < 0 || !neighbour) return aircraft;
  const chosen = chosenVariant(aircraft)?.id === id ? chooseVariant(aircraft, neighbour.id) : aircraft;
  const left = variantsOf(chosen).filter((each) => each.id !== id);
  if (left.length < 2) {
    const { variants: _, ...single } = chosen;
    return single;
  }
  return withoutUnused(withShared(chosen, sharedAircraft(chosen), left));
}

/** Without what every variant leaves out. */
function withoutUnused(aircraft: Aircraft): Aircraft {
  const shared = sharedAircraft(aircraft);
  const here = variantFrom(shared, aircraft).without ?? [];
  const others = variantsOf(aircraft).filter(({ id }) => id !== aircraft.variants?.chosenId);
  const unused = here.filter((id) => others.every(({ without }) => without?.includes(id)));
  if (unused.length === 0) return aircraft;
  const list = variantsOf(aircraft).map((each) => {
    const { without, ...rest } = each;
    const left = without?.filter((id) => !unused.includes(id)) ?? [];
    return left.length > 0 ? { ...rest, without: left } : rest;
  });
  return withShared(aircraft, unused.reduce(withoutItem, shared), list);
}

/** Brings something back that the variant on the bench leaves out, as all share it, with what goes with it. */
export function putBack(aircraft: Aircraft, id: string): Aircraft {
  const shared = sharedAircraft(aircraft);
  const { without = [], changes = [] } = variantFrom(shared, aircraft);
  return asThisOne(aircraft, shared, { without: without.filter((each) => each !== id), changes });
}

/** A part or tank of the variant on the bench as all share it. */
export function asShared(aircraft: Aircraft, id: string): Aircraft {
  const shared = sharedAircraft(aircraft);
  const { without = [], changes = [] } = variantFrom(shared, aircraft);
  return asThisOne(aircraft, shared, { without, changes: changes.filter(({ of }) => of !== id) });
}

function asThisOne(
  aircraft: Aircraft,
  shared: Aircraft,
  says: Pick<Variant, 'without' | 'changes'>,
): Aircraft {
  const chosen = chosenVariant(aircraft);
  if (!chosen || !aircraft.variants) return aircraft;
  const next = { ...asVariant(shared, { ...chosen, ...says }), variants: aircraft.variants };
  return withShared(next, shared, aircraft.variants.list);
}
