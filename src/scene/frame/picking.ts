import { type Camera, type Object3D, Raycaster, type Scene, Vector2 } from 'three';
import type { Vec3 } from '../../engine/geometry/types';
import type { Ray } from '../../interaction/dragPlane';
import { pickItem } from '../../interaction/pickItem';
import type { Bench } from '../../store/bench';
import { rayToAircraft, toAircraft } from './frame';

/** The raycaster's layer of the airframe, which is picked only where nothing carried is. */
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

/** Names the structure that a facet of a drawn airframe belongs to. */
export type StructureOfFacet = (facet: number) => string | null;

const structureOf = (object: Object3D, facet: number): string | null => {
  const of: StructureOfFacet | undefined = object.userData.structureOf;
  return of?.(facet) ?? null;
};

/**
 * What lies under a place of the picture. The skin is looked through: a part or tank is hit first, the
 * one already selected before one in front of it.
 */
export function pick(bench: Bench, scene: Scene, camera: Camera, at: readonly [number, number]): Hit | null {
  const { selectedId, hiddenIds, looking } = bench.view.getState();
  const { parts, tanks } = bench.balance.get().loaded;
  const seen = [...parts, ...tanks].filter(({ id }) => !hiddenIds.includes(id));
  const item = looking.exploded ? null : pickItem(pointerRay(camera, at), seen, selectedId);
  if (item) return { kind: 'item', ...item };
  aim(camera, at);
  raycaster.layers.set(PICK_STRUCTURE);
  for (const { object, faceIndex, point } of raycaster.intersectObject(scene, true)) {
    const id = structureOf(object, faceIndex ?? -1);
    if (id !== null) return { kind: 'structure', id, pointMm: toAircraft(point) };
  }
  return null;
}
