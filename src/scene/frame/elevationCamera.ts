import type { OrthographicCamera } from 'three';
import { axisOf, type Elevation, uprightMmPerPx } from '../../interaction/elevation';
import type { AxisState } from '../../store/axisStore';
import { toWorld } from './frame';

/** How far the camera stands off the plane of symmetry, mm; beyond any model. */
export const STAND_OFF_MM = 20_000;

/**
 * Sets an orthographic camera so that its picture is the shared axis: a station (or buttline, in front
 * elevation) falls on the very column `axisToPx` gives, and a pixel is as high as it is wide, but for the span of a wide wing.
 */
export function registerElevation(camera: OrthographicCamera, view: Elevation, axes: AxisState): void {
  const axis = axisOf(axes, view);
  const halfWidth = (axes.widthPx / 2) * Math.abs(axis.mmPerPx);
  const halfHeight = (axes.heightPx / 2) * uprightMmPerPx(axes, view);
  const across = axis.atLeftMm + (axes.widthPx / 2) * axis.mmPerPx;
  const upright = axes.middleMm[view];
  camera.left = -halfWidth;
  camera.right = halfWidth;
  camera.top = halfHeight;
  camera.bottom = -halfHeight;
  camera.near = 1;
  camera.far = 2 * STAND_OFF_MM;
  camera.zoom = 1;
  switch (view) {
    case 'side':
      toWorld([across, -STAND_OFF_MM, upright], camera.position);
      camera.rotation.set(0, 0, 0);
      break;
    case 'top':
      toWorld([across, upright, STAND_OFF_MM], camera.position);
      camera.rotation.set(-Math.PI / 2, 0, 0);
      break;
    case 'front':
      toWorld([-STAND_OFF_MM, across, upright], camera.position);
      camera.rotation.set(0, -Math.PI / 2, 0);
      break;
  }
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
}
