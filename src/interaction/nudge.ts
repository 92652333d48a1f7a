import type { Vec3 } from '../engine/geometry/types';
import type { View } from '../store/viewStore';

/** Steps of the arrow keys, mm. */
const NUDGE_MM = 1;
const NUDGE_FAST_MM = 10;

/**
 * What an arrow key does to a selected item: left and right run along the station axis (across in front
 * elevation, as seen), up and down along what points up on the screen. Page Up and Page Down raise and
 * lower in every view. Null for other keys.
 */
export function nudgeBy(key: string, view: View, fast: boolean): Vec3 | null {
  const step = fast ? NUDGE_FAST_MM : NUDGE_MM;
  const across = view === 'front';
  const upIsBeam = view === 'top' || view === 'free';
  switch (key) {
    case 'ArrowLeft':
      return across ? [0, step, 0] : [-step, 0, 0];
    case 'ArrowRight':
      return across ? [0, -step, 0] : [step, 0, 0];
    case 'ArrowUp':
      return upIsBeam ? [0, step, 0] : [0, 0, step];
    case 'ArrowDown':
      return upIsBeam ? [0, -step, 0] : [0, 0, -step];
    case 'PageUp':
      return [0, 0, step];
    case 'PageDown':
      return [0, 0, -step];
    default:
      return null;
  }
}
