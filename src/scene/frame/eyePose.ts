import type { OrthographicCamera, PerspectiveCamera } from 'three';
import { type Quaternion, Vector3 } from 'three';

/**
 * How the stage is looked at, in one form for both kinds of camera: at what, from which way, how much of it fits the
 * picture's height there, mm, and how strong the perspective is. An elevation is the same with next to none.
 */
export interface EyePose {
  readonly target: Vector3;
  readonly turn: Quaternion;
  readonly heightMm: number;
  /** tan of half the angle of view. */
  readonly tangent: number;
}

/** As good as parallel: half a pixel at the edge of a picture of a thousand. */
const PARALLEL = Math.tan((0.4 * Math.PI) / 180);
/** In front of and behind what is looked at, mm: as far as the elevations' own backdrop, and more. */
const DEEP_MM = 30_000;

export const poseOfElevation = (camera: OrthographicCamera, standOffMm: number): EyePose => {
  const ahead = new Vector3(0, 0, -1).applyQuaternion(camera.quaternion);
  return {
    target: camera.position.clone().addScaledVector(ahead, standOffMm),
    turn: camera.quaternion.clone(),
    heightMm: camera.top - camera.bottom,
    tangent: PARALLEL,
  };
};

export const poseOfFree = (camera: PerspectiveCamera, target: Vector3): EyePose => {
  const tangent = Math.tan((camera.fov * Math.PI) / 360);
  return {
    target: target.clone(),
    turn: camera.quaternion.clone(),
    heightMm: 2 * tangent * camera.position.distanceTo(target),
    tangent,
  };
};

/** Between two ways of looking: sizes go by ratio, turns by the shorter way round. */
export const mixedPose = (from: EyePose, to: EyePose, share: number): EyePose => ({
  target: from.target.clone().lerp(to.target, share),
  turn: from.turn.clone().slerp(to.turn, share),
  heightMm: from.heightMm * (to.heightMm / from.heightMm) ** share,
  tangent: from.tangent + (to.tangent - from.tangent) * share,
});

/** The whole world turned about a point takes whoever stands in it along. */
export const turnedPose = (pose: EyePose, turn: Quaternion, about: Vector3): EyePose => ({
  ...pose,
  target: pose.target.clone().sub(about).applyQuaternion(turn).add(about),
  turn: turn.clone().multiply(pose.turn),
});

/** Sets a camera to look so. */
export function takePose(camera: PerspectiveCamera, pose: EyePose, aspect: number): void {
  const awayMm = pose.heightMm / 2 / pose.tangent;
  const back = new Vector3(0, 0, awayMm).applyQuaternion(pose.turn);
  camera.position.copy(pose.target).add(back);
  camera.quaternion.copy(pose.turn);
  camera.aspect = aspect;
  camera.fov = (Math.atan(pose.tangent) * 360) / Math.PI;
  camera.near = Math.max(20, awayMm - DEEP_MM);
  camera.far = awayMm + DEEP_MM + 10_000;
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
}
