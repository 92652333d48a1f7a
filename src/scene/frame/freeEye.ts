import { createRef, type RefObject } from 'react';
import { PerspectiveCamera, Vector3 } from 'three';
import type { Vec3 } from '../../engine/geometry/types';
import { frameAircraft, LOWEST_EYE, orbitBy, zoomBy } from './freeCamera';
import type { OrbitHandle } from './Orbit';

/** The free view in a level world: its camera, what it looks at, and whether a person has moved it. */
export interface FreeEye {
  readonly camera: PerspectiveCamera;
  /** What is looked at until the orbit comes. */
  readonly homeMm: Vector3;
  /** Its orbit, once fetched. */
  readonly orbit: RefObject<OrbitHandle | null>;
  /** True once a person has moved it since it was framed. */
  moved: boolean;
  target(): Vector3;
  /** Shows all the points, from where one stands at first. */
  frame(pointsMm: readonly Vec3[], aspect: number): void;
  /** Brings it nearer (a factor below 1) or away about a place of the picture, −1 to 1, or about what it looks at. */
  zoom(factor: number, at?: readonly [number, number]): void;
  /** Turns it about what it looks at, degrees. */
  turn(rightDeg: number, upDeg: number): void;
  /** What it looks at does not sink below the mat. */
  holdAbove(groundMm: number): void;
}

export function createFreeEye(): FreeEye {
  const camera = Object.assign(new PerspectiveCamera(30), { manual: true });
  const homeMm = new Vector3();
  const orbit = createRef<OrbitHandle>();
  const target = () => orbit.current?.target ?? homeMm;

  /** The point under a place of the picture, as far away as what is looked at. */
  const pointAt = ([x, y]: readonly [number, number]): Vector3 => {
    const ray = new Vector3(x, y, 0.5).unproject(camera).sub(camera.position).normalize();
    const away = target().clone().sub(camera.position);
    const along = ray.dot(away.clone().normalize());
    return ray.multiplyScalar(away.length() / Math.max(along, 0.2)).add(camera.position);
  };

  const eye: FreeEye = {
    camera,
    homeMm,
    orbit,
    moved: false,
    target,
    frame(pointsMm, aspect) {
      homeMm.copy(frameAircraft(camera, pointsMm, aspect));
      orbit.current?.target.copy(homeMm);
      orbit.current?.update();
      eye.moved = false;
    },
    zoom(factor, at) {
      eye.moved = true;
      zoomBy(camera, target(), factor, at ? pointAt(at) : target());
      orbit.current?.update();
    },
    turn(rightDeg, upDeg) {
      eye.moved = true;
      orbitBy(camera, target(), rightDeg, upDeg, LOWEST_EYE);
      orbit.current?.update();
    },
    holdAbove(groundMm) {
      const at = orbit.current?.target;
      if (at) at.y = Math.max(at.y, groundMm);
    },
  };
  return eye;
}
