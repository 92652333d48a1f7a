import { poseRotation, turnBack } from '../engine/geometry/rotation';
import type { Pose, Vec3 } from '../engine/geometry/types';
import { addScaled, cross, dot, mirrorY, sub } from '../engine/geometry/vec3';
import type { Shape } from '../engine/mass/shapes';
import { tessellate } from '../engine/mass/tessellate';
import type { Mesh } from '../engine/mass/types';
import { perObject } from '../engine/memory/memory';
import { orientedBox } from '../model/airframe/extent';
import type { Piece } from '../model/airframe/pieces';
import { poseOf } from '../model/airframe/poses';
import type { Item } from '../model/document/edit';
import type { Ray } from './dragPlane';

/** Facets to a full circle: a pointer needs no more. */
const SEGMENTS = 20;

const meshOf = perObject((shape: Shape): Mesh => tessellate(shape, { segments: SEGMENTS }));

interface Turned {
  readonly shape: Shape;
  readonly pose: Pose;
  readonly rotation: ReturnType<typeof poseRotation>;
  readonly box: ReturnType<typeof orientedBox>;
  /** The shape is the mirror image of the one given, in its own frame. */
  readonly flipped: boolean;
}

const turnedItem = perObject((item: Item): Turned => {
  const pose = poseOf(item);
  const flipped = 'mirrored' in item && item.mirrored === true;
  return { shape: item.shape, pose, rotation: poseRotation(pose), box: orientedBox(item), flipped };
});

/** A piece as posed; that it may be mirrored as a whole is the ray's affair. */
const turnedPiece = perObject(({ shape, pose }: Piece): Turned => {
  const box = orientedBox({ ...pose, shape });
  return { shape, pose, rotation: poseRotation(pose), box, flipped: false };
});

/** Whether a ray passes through the box around an item. */
function meetsBox({ originMm, direction }: Ray, { box }: Turned): boolean {
  const from = turnBack(box.rotation, sub(originMm, box.centreMm));
  const way = turnBack(box.rotation, direction);
  let [near, far] = [-Infinity, Infinity];
  for (const axis of [0, 1, 2] as const) {
    const half = box.halfMm[axis] + 1e-6;
    if (Math.abs(way[axis]) < 1e-12) {
      if (Math.abs(from[axis]) > half) return false;
      continue;
    }
    const [a, b] = [(-half - from[axis]) / way[axis], (half - from[axis]) / way[axis]];
    near = Math.max(near, Math.min(a, b));
    far = Math.min(far, Math.max(a, b));
  }
  return far >= Math.max(near, 0);
}

/** Where a ray enters a triangle, in lengths of its direction; null where it passes by (Möller and Trumbore, 1997). */
function alongToTriangle(from: Vec3, way: Vec3, a: Vec3, b: Vec3, c: Vec3): number | null {
  const [ab, ac] = [sub(b, a), sub(c, a)];
  const p = cross(way, ac);
  const volume = dot(ab, p);
  if (Math.abs(volume) < 1e-12) return null;
  const s = sub(from, a);
  const u = dot(s, p) / volume;
  if (u < 0 || u > 1) return null;
  const q = cross(s, ab);
  const v = dot(way, q) / volume;
  if (v < 0 || u + v > 1) return null;
  const along = dot(ac, q) / volume;
  return along > 0 ? along : null;
}

/** Where a ray of the aircraft's frame first meets an item, in lengths of its direction; null where it passes by. */
export const rayToItem = (ray: Ray, item: Item): number | null => rayToBody(ray, turnedItem(item));

/** The same of a piece of the airframe. */
function rayToPiece({ originMm, direction }: Ray, piece: Piece): number | null {
  const ray = piece.mirrored
    ? { originMm: mirrorY(originMm), direction: mirrorY(direction) }
    : { originMm, direction };
  return rayToBody(ray, turnedPiece(piece));
}

function rayToBody(ray: Ray, turned: Turned): number | null {
  if (!meetsBox(ray, turned)) return null;
  const flip = turned.flipped ? -1 : 1;
  const toOwn = (v: Vec3): Vec3 => {
    const [x, y, z] = turnBack(turned.rotation, v);
    return [x, y * flip, z];
  };
  const from = toOwn(sub(ray.originMm, turned.pose.positionMm));
  const way = toOwn(ray.direction);
  const { verticesMm, triangles } = meshOf(turned.shape);
  let nearest: number | null = null;
  for (const [a, b, c] of triangles) {
    const [pa, pb, pc] = [verticesMm[a], verticesMm[b], verticesMm[c]];
    const along = pa && pb && pc ? alongToTriangle(from, way, pa, pb, pc) : null;
    if (along !== null && (nearest === null || along < nearest)) nearest = along;
  }
  return nearest;
}

export interface PickedItem {
  readonly id: string;
  readonly pointMm: Vec3;
}

/** The nearest item under a ray; the preferred one, if the ray meets it, before any in front of it. */
export function pickItem(ray: Ray, items: readonly Item[], preferredId: string | null): PickedItem | null {
  let [best, bestAlong]: [Item | null, number] = [null, Infinity];
  for (const item of items) {
    const along = rayToItem(ray, item);
    if (along === null) continue;
    if (item.id === preferredId)
      return { id: item.id, pointMm: addScaled(ray.originMm, ray.direction, along) };
    if (along < bestAlong) [best, bestAlong] = [item, along];
  }
  return best && { id: best.id, pointMm: addScaled(ray.originMm, ray.direction, bestAlong) };
}

/** The nearest piece of the airframe under a ray, by the structure element that it is of. */
export function pickPiece(ray: Ray, all: readonly Piece[]): PickedItem | null {
  let [best, bestAlong]: [Piece | null, number] = [null, Infinity];
  for (const piece of all) {
    const along = rayToPiece(ray, piece);
    if (along !== null && along < bestAlong) [best, bestAlong] = [piece, along];
  }
  return best && { id: best.sourceId, pointMm: addScaled(ray.originMm, ray.direction, bestAlong) };
}
