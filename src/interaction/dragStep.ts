import type { Vec3 } from '../engine/geometry/types';
import type { View } from '../store/viewStore';
import { dragNormal, followPointer, type Ray, rayOnPlane } from './dragPlane';
import { type Snapped, type SnapSetting, snapPlace } from './snap';

/** What a drag holds on to: where the item stood, and the point of it that was grabbed, mm. */
export interface Grip {
  readonly itemMm: Vec3;
  readonly grabbedMm: Vec3;
  readonly upright: boolean;
}

export interface DragAsk {
  readonly ray: Ray;
  readonly view: View;
  readonly upright: boolean;
  /** Null goes free. */
  readonly snap: Omit<SnapSetting, 'moving'> | null;
  /** Nothing is dragged out of this box, mm. */
  readonly bounds: { readonly minMm: Vec3; readonly maxMm: Vec3 };
}

const FREE: Snapped['caught'] = ['free', 'free', 'free'];

/** The grip taken again where the item now stands, so that the drag goes on in another plane without a jump. */
export const regrip = (grip: Grip, nowMm: Vec3, upright: boolean): Grip => ({
  itemMm: nowMm,
  grabbedMm: followPointer(grip.grabbedMm, grip.itemMm, nowMm),
  upright,
});

/** Where a dragged item goes for a pointer's ray, and what it catches on; null where the ray misses the plane. */
export function dragStep(grip: Grip, { ray, view, upright, snap, bounds }: DragAsk): Snapped | null {
  const normal = dragNormal(view, upright);
  const pointer = rayOnPlane(ray, grip.grabbedMm, normal);
  if (!pointer) return null;
  const wanted = followPointer(grip.itemMm, grip.grabbedMm, pointer);
  const held = wanted.map((mm, axis) =>
    Math.min(bounds.maxMm[axis] ?? mm, Math.max(bounds.minMm[axis] ?? mm, mm)),
  ) as unknown as Vec3;
  // Across its plane the item stays where it was, to the last digit.
  const at = held.map((mm, axis) => (normal[axis] === 0 ? mm : (grip.itemMm[axis] ?? mm))) as unknown as Vec3;
  if (!snap) return { positionMm: at, caught: FREE };
  return snapPlace(at, { ...snap, moving: [normal[0] === 0, normal[1] === 0, normal[2] === 0] });
}
