import { panElevation, zoomElevation } from '../../interaction/elevation';
import type { Bench } from '../../store/bench';
import type { View } from '../../store/viewStore';
import type { EyeControl } from '../frame/Cameras';
import type { Place, StageFrame } from './stageFrame';

const WHEEL = 0.0015;

type Elevation = Exclude<View, 'free'>;

/** Ways to move the picture itself. */
export interface Looking {
  /** The elevation that is shown; null in the free view, whose orbit is not ours. */
  elevation(): Elevation | null;
  pan(view: Elevation, at: Place, before: Place): void;
  /** Two fingers, one of which has moved from `before` to `at`. */
  pinch(view: Elevation | null, before: Place, at: Place, other: Place): void;
  /** False where the wheel is the orbit's. */
  wheel(event: WheelEvent): boolean;
}

const apart = (p: Place, q: Place) => Math.max(Math.hypot(p[0] - q[0], p[1] - q[1]), 1);
const middle = (p: Place, q: Place): Place => [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];

export function createLooking(bench: Bench, frame: StageFrame, eye: () => EyeControl | null): Looking {
  const elevation = () => {
    const { view } = bench.view.getState();
    return view === 'free' ? null : view;
  };
  const pan = (view: Elevation, at: Place, before: Place) =>
    bench.axis.setState((axes) => panElevation(axes, view, [at[0] - before[0], at[1] - before[1]]));
  const zoom = (view: Elevation, factor: number, about: Place) =>
    bench.axis.setState((axes) => zoomElevation(axes, view, factor, about));
  return {
    elevation,
    pan,
    pinch: (view, before, at, other) => {
      const factor = apart(before, other) / apart(at, other);
      const about = middle(at, other);
      if (!view) return eye()?.zoomFree(factor, frame.picture(about));
      zoom(view, factor, about);
      pan(view, about, middle(before, other));
    },
    wheel: (event) => {
      const view = elevation();
      if (!view) return false;
      const lines = event.deltaMode === 1 ? 16 : 1;
      zoom(view, Math.exp(event.deltaY * lines * WHEEL * (event.ctrlKey ? 5 : 1)), frame.place(event));
      return true;
    },
  };
}
