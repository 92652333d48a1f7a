import { type Camera, type Object3D, Raycaster, type Scene, Vector2 } from 'three';
import type { Vec3 } from '../../engine/geometry/types';
import type { Ray } from '../../interaction/dragPlane';
import { rayToAircraft, toAircraft } from './frame';

/** The raycaster's layers: what is carried, and the airframe that is picked only where nothing else is. */
export const PICK_ITEM = 1;
export const PICK_STRUCTURE = 2;

export interface Hit {
  readonly kind: 'item' | 'structure';
  readonly id: string;
  readonly pointMm: Vec3;
}

const raycaster = new Raycaster();
const pointer = new Vector2();

/** Aims at a place of the picture, −1 to 1 right and up. */
function aim(camera: Camera, [x, y]: readonly [number, number]): void {
  raycaster.setFromCamera(pointer.set(x, y), camera);
}

/** The pointer's ray in the aircraft's frame. */
export function pointerRay(camera: Camera, at: readonly [number, number]): Ray {
  aim(camera, at);
  return rayToAircraft(raycaster.ray);
}

const idOf = (object: Object3D, key: 'itemId' | 'structureId'): string | undefined => object.userData[key];

/**
 * What lies under a place of the picture. The skin is looked through: a part or tank is hit first, the
 * one already selected before one in front of it.
 */
export function pick(
  scene: Scene,
  camera: Camera,
  at: readonly [number, number],
  selectedId: string | null,
): Hit | null {
  aim(camera, at);
  raycaster.layers.set(PICK_ITEM);
  const items = raycaster.intersectObject(scene, true);
  const item = items.find(({ object }) => idOf(object, 'itemId') === selectedId) ?? items[0];
  if (item) return { kind: 'item', id: idOf(item.object, 'itemId') ?? '', pointMm: toAircraft(item.point) };
  raycaster.layers.set(PICK_STRUCTURE);
  const [skin] = raycaster.intersectObject(scene, true);
  return skin
    ? { kind: 'structure', id: idOf(skin.object, 'structureId') ?? '', pointMm: toAircraft(skin.point) }
    : null;
}
