import type { Bench } from '../../store/bench';
import type { Reach } from './reaching';
import type { Place } from './stageFrame';

const SWEEP_HINT = 'Drag the tip forward or aft to sweep the wing';

/** Shows what a mouse that only moves is over; `tell` is handed a hint, and null when there is none. */
export function createHovering(
  bench: Bench,
  box: HTMLElement,
  reach: Reach,
  tell: (hint: string | null) => void,
) {
  let hinted = false;
  const hint = (overTip: boolean) => {
    if (overTip === hinted) return;
    hinted = overTip;
    tell(overTip ? SWEEP_HINT : null);
  };
  const lightUp = (hoveredId: string | null) => {
    if (bench.view.getState().hoveredId !== hoveredId) bench.view.setState({ hoveredId });
  };
  return {
    over: (at: Place) => {
      const { item, tip } = reach(at, false);
      lightUp(item?.id ?? null);
      hint(tip !== null);
      box.style.cursor = item ? (item.locked ? 'pointer' : 'grab') : tip ? 'ew-resize' : '';
    },
    leave: () => {
      hint(false);
      lightUp(null);
    },
  };
}
