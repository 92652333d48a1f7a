import { distance } from '../../engine/geometry/vec3';
import { itemSolid, middleOf } from '../airframe/solids';
import { itemById } from '../document/edit';
import type { Aircraft } from '../document/types';
import { type EntryOptions, type EntryPath, entryPath } from './entryPath';

/** How an item goes in, and through which hatch; not found, the last hatch that was tried. */
export type Entry = EntryPath & { readonly hatchId: string; readonly hatchName: string };

/**
 * Looks for a way in through one hatch after the other, the nearest to the item's middle first. Without a way,
 * `tried` counts the poses of all hatches and the sentence is that of the nearest. Null without a hatch or item.
 */
export function entryThroughAny(
  aircraft: Aircraft,
  itemId: string,
  options: EntryOptions = {},
): Entry | null {
  const item = itemById(aircraft, itemId);
  if (!item) return null;
  const middle = middleOf(itemSolid(item));
  const nearest = [...(aircraft.hatches ?? [])].sort(
    (a, b) => distance(a.centreMm, middle) - distance(b.centreMm, middle),
  );
  let failed: Extract<Entry, { found: false }> | null = null;
  for (const { id, name } of nearest) {
    const path = entryPath(aircraft, itemId, id, options);
    if (!path) continue;
    if (path.found) return { ...path, hatchId: id, hatchName: name };
    const tried: number = path.tried + (failed?.tried ?? 0);
    failed = { ...(failed ?? { ...path, hatchId: id, hatchName: name }), tried };
  }
  return failed;
}
