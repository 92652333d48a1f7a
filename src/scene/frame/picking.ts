import { type Camera, Raycaster, Vector2 } from 'three';
import type { Vec3 } from '../../engine/geometry/types';
import type { Ray } from '../../interaction/dragPlane';
import { pickItem, pickPiece } from '../../interaction/pickItem';
import { pieces } from '../../model/airframe/pieces';
import type { Bench } from '../../store/bench';
import { rayToAircraft } from './frame';

export interface Hit {
  readonly kind: 'item' | 'structure';
  readonly id: string;
  readonly pointMm: Vec3;
}

const raycaster = new Raycaster();
const pointer = new Vector2();

/** The pointer's ray in the aircraft's frame, through a place of the picture, −1 to 1 right and up. */
export function pointerRay(camera: Camera, [x, y]: readonly [number, number]): Ray {
  raycaster.setFromCamera(pointer.set(x, y), camera);
  return rayToAircraft(raycaster.ray);
}

/**
 * What lies under a place of the picture. The skin is looked through: a part or tank is hit first, the
 * one already selected before one in front of it. Things that are lifted out for looking at are not where they are drawn.
 */
export function pick(bench: Bench, camera: Camera, at: readonly [number, number]): Hit | null {
  const { selectedId, hiddenIds, looking } = bench.view.getState();
  const { loaded } = bench.balance.get();
  const ray = pointerRay(camera, at);
  const seen = [...loaded.parts, ...loaded.tanks].filter(({ id }) => !hiddenIds.includes(id));
  const item = looking.exploded ? null : pickItem(ray, seen, selectedId);
  if (item) return { kind: 'item', ...item };
  const shown = pieces(loaded).filter(({ sourceId }) => !hiddenIds.includes(sourceId));
  const piece = pickPiece(ray, shown);
  return piece && { kind: 'structure', ...piece };
}
