import { type Elevation, panElevation, zoomElevation } from '../../interaction/elevation';
import type { Bench } from '../../store/bench';
import type { EyeMove } from '../../store/eye';
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
}

/** How wishes from keys and buttons move the eye: the free view turns and nears, an elevation shifts and grows. */
export function eyeMover({ bench, eye, frame, animate }: EyeMoveSetting): (move: EyeMove) => void {
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
    if (view === 'free') animate(() => inFree(move));
    else inElevation(view, move);
  };
}
