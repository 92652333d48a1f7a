import {
  type Elevation,
  elevationOfGaze,
  gazeOfElevation,
  panElevation,
  zoomElevation,
} from '../../interaction/elevation';
import type { Bench } from '../../store/bench';
import type { EyeMove, Gaze } from '../../store/eye';
import type { PictureSize } from './freeCamera';
import type { FreeEye } from './freeEye';
import { fitToView } from './useStageBox';

/** A degree of turning shifts an elevation by so much, px. */
const PX_PER_DEG = 4;

interface EyeMoveSetting {
  readonly bench: Bench;
  readonly eye: FreeEye;
  /** Stands the free view off so that all is seen. */
  readonly frame: () => void;
  /** Makes a change of how it is looked at, and shows the way there. */
  readonly animate: (change: () => void) => void;
  /** True on the way from another view: that flight leads to wherever the eye is put. */
  readonly onWay: () => boolean;
  readonly picture: () => PictureSize;
}

/** How the stage is looked at in the view that is shown; null where nothing is shown of it. */
export function gazeNow({
  bench,
  eye,
  picture,
}: Pick<EyeMoveSetting, 'bench' | 'eye' | 'picture'>): Gaze | null {
  const { view } = bench.view.getState();
  const axes = bench.axis.getState();
  if (view === 'free') return eye.gaze(picture());
  return axes.widthPx > 0 ? gazeOfElevation(axes, view) : null;
}

/** How wishes from keys and buttons move the eye: the free view turns and nears, an elevation shifts and grows. */
export function eyeMover(setting: EyeMoveSetting): (move: EyeMove) => void {
  const { bench, eye, frame, animate, onWay, picture } = setting;
  const look = ({ gaze, flies }: Extract<EyeMove, { kind: 'look' }>) => {
    const { view } = bench.view.getState();
    const change = () => {
      if (view === 'free') eye.standFor(gaze, picture());
      else bench.axis.setState(elevationOfGaze(bench.axis.getState(), view, gaze));
    };
    if (!flies || onWay()) change();
    else animate(change);
  };
  const inFree = (move: EyeMove) => {
    if (move.kind === 'zoom') eye.zoom(move.factor);
    else if (move.kind === 'turn') eye.turn(move.rightDeg, move.upDeg);
    else frame();
  };
  const inElevation = (view: Elevation, move: EyeMove) => {
    const axes = bench.axis.getState();
    const middle = [axes.widthPx / 2, axes.heightPx / 2] as const;
    if (move.kind === 'zoom') bench.axis.setState(zoomElevation(axes, view, move.factor, middle));
    else if (move.kind === 'turn')
      bench.axis.setState(panElevation(axes, view, [-move.rightDeg * PX_PER_DEG, move.upDeg * PX_PER_DEG]));
    else animate(() => fitToView(bench));
  };
  return (move) => {
    const { view } = bench.view.getState();
    if (move.kind === 'look') look(move);
    else if (view === 'free') animate(() => inFree(move));
    else inElevation(view, move);
  };
}
