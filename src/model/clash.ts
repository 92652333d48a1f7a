import { boxOverlap } from '../engine/fit/boxes';
import type { Vec3 } from '../engine/geometry/types';
import { type Item, itemById } from './edit';
import { orientedBox } from './extent';
import type { Aircraft } from './types';

/** Two things in one place, judged by their bounding boxes: which other, and the shortest way clear of it. */
export interface Clash {
  readonly otherId: string;
  readonly otherName: string;
  /** Move the item so to clear it, mm. */
  readonly clearByMm: Vec3;
  readonly depthMm: number;
}

const boxes = new WeakMap<Item, ReturnType<typeof orientedBox>>();

const boxOf = (item: Item) => {
  let box = boxes.get(item);
  if (!box) {
    box = orientedBox(item);
    boxes.set(item, box);
  }
  return box;
};

/** What one part or tank runs into, deepest first. A round thing is taken as the box around it. */
export function clashesOf(aircraft: Aircraft, itemId: string): Clash[] {
  const item = itemById(aircraft, itemId);
  if (!item) return [];
  const own = boxOf(item);
  const found: Clash[] = [];
  for (const other of [...aircraft.parts, ...aircraft.tanks]) {
    if (other.id === itemId) continue;
    const clearByMm = boxOverlap(own, boxOf(other));
    if (clearByMm) {
      found.push({ otherId: other.id, otherName: other.name, clearByMm, depthMm: Math.hypot(...clearByMm) });
    }
  }
  return found.sort((a, b) => b.depthMm - a.depthMm);
}
