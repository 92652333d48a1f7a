import { hullsAround, itemSolid } from '../airframe/solids';
import type { Item } from '../document/edit';
import type { Aircraft } from '../document/types';
import { type EntryOptions, entryPath } from './entryPath';

/** The order in which what stands in the hulls can go in. */
export interface FittingOrder {
  /** First in first. Items that stand outside all hulls are not in it. */
  readonly order: readonly { readonly id: string; readonly name: string; readonly hatchId: string }[];
  /** What must be in before what, as far as the searches showed: `firstId` blocks nothing once `thenId` is out. */
  readonly before: readonly { readonly firstId: string; readonly thenId: string }[];
  /** Items for which no path was found, however much else was out. Never proof that there is none. */
  readonly stuck: readonly { readonly id: string; readonly name: string; readonly sentence: string }[];
}

/**
 * Takes everything out, as soon as a path is found past what is still in, and turns the order round. An item
 * that came out only after others it had run into goes in before them. Searches much: run it off the screen's thread.
 */
export function fittingOrder(aircraft: Aircraft, options: Omit<EntryOptions, 'without'> = {}): FittingOrder {
  const { hatches = [] } = aircraft;
  const all: readonly Item[] = [...aircraft.tanks, ...aircraft.parts];
  let left = all.filter((item) => hullsAround(aircraft, itemSolid(item)).length > 0);
  const out = new Set<string>();
  const taken: { id: string; name: string; hatchId: string }[] = [];
  const blockers = new Map<string, ReadonlySet<string>>();
  const sentences = new Map<string, string>();
  const before: { firstId: string; thenId: string }[] = [];
  let progress = hatches.length > 0;
  while (progress && left.length > 0) {
    progress = false;
    const stillIn: Item[] = [];
    for (const item of left) {
      const blockedNow = new Set<string>();
      // What it ran into has to be out before another search is worth while.
      const waiting = blockers.get(item.id);
      const worthWhile = !waiting || [...waiting].some((id) => out.has(id));
      const hatch = worthWhile
        ? hatches.find(({ id }) => {
            const path = entryPath(aircraft, item.id, id, { ...options, without: out });
            if (!path || path.found) return path?.found;
            sentences.set(item.id, path.sentence);
            for (const blocker of path.blockedByIds) blockedNow.add(blocker);
            return false;
          })
        : undefined;
      if (!hatch) {
        if (worthWhile) blockers.set(item.id, blockedNow);
        stillIn.push(item);
        continue;
      }
      for (const id of waiting ?? []) if (out.has(id)) before.push({ firstId: item.id, thenId: id });
      taken.push({ id: item.id, name: item.name, hatchId: hatch.id });
      out.add(item.id);
      progress = true;
    }
    left = stillIn;
  }
  const stuck = left.map(({ id, name }) => ({
    id,
    name,
    sentence: sentences.get(id) ?? `No path found for ${name}: the aircraft has no hatch.`,
  }));
  return { order: taken.reverse(), before, stuck };
}
