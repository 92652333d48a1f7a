import { type RefObject, useEffect, useRef } from 'react';
import { fitElevation } from '../../interaction/elevation';
import type { Bench } from '../../store/bench';
import { useBench } from '../../store/react';
import { extentOnce } from './useGround';

/** Shows all of the aircraft as committed in the view shown. */
export function fitToView({ document, axis, view, balance }: Bench): void {
  const { band } = balance.get();
  const bandMm = band && band.aftMm - band.forwardMm;
  const extent = extentOnce(document.api.getState().committed);
  const { view: shown, wholeSpan } = view.getState();
  axis.setState((axes) => fitElevation(extent, shown, axes, { bandMm, wholeSpan }));
}

const inHand = ({ drag, reshape }: Bench): boolean =>
  drag.api.getState().itemId !== null || reshape.api.getState().pieceId !== null;

/** Tells whether a button or finger is down anywhere, and when the last is up. */
function watchPresses(onUp: () => void) {
  const listening = new AbortController();
  const options = { capture: true, signal: listening.signal };
  let isDown = false;
  const release = () => {
    if (!isDown) return;
    isDown = false;
    onUp();
  };
  window.addEventListener('pointerdown', () => (isDown = true), options);
  window.addEventListener('pointerup', release, options);
  window.addEventListener('pointercancel', release, options);
  // What went up outside of the window is missed, and seen by the next move.
  window.addEventListener('pointermove', ({ buttons }) => buttons === 0 && release(), options);
  return { isDown: () => isDown, stop: () => listening.abort() };
}

/**
 * Measures the stage's box, and keeps the shared axis fitted to it: for a new size, another view or an
 * aircraft of another size. Returns how to fit it again.
 */
export function useStageBox(box: RefObject<HTMLElement | null>): () => void {
  const bench = useBench();
  const refit = useRef(() => fitToView(bench));
  refit.current = () => fitToView(bench);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    let waiting: (() => void) | null = null;
    const measure = (widthPx: number, heightPx: number) => {
      const { widthPx: w, heightPx: h } = bench.axis.getState();
      if (widthPx <= 0 || heightPx <= 0 || (w === widthPx && h === heightPx)) return;
      // The picture keeps its scale under the hand: a verdict that takes a line more is made room for afterwards.
      if (presses.isDown() || inHand(bench)) {
        waiting = () => measure(element.clientWidth, element.clientHeight);
        return;
      }
      bench.axis.setState({ widthPx, heightPx });
      fitToView(bench);
    };
    const makeRoom = () => {
      if (presses.isDown() || inHand(bench) || !waiting) return;
      const late = waiting;
      waiting = null;
      // After what was set down is in the document.
      queueMicrotask(late);
    };
    const presses = watchPresses(makeRoom);
    const observer = new ResizeObserver(([entry]) => {
      if (entry) measure(entry.contentRect.width, entry.contentRect.height);
    });
    observer.observe(element);
    const offView = bench.view.subscribe((now, before) => {
      if (now.view !== before.view || now.wholeSpan !== before.wholeSpan) fitToView(bench);
    });
    const sizeOf = () => {
      const { minMm, maxMm } = extentOnce(bench.document.api.getState().committed);
      return [...minMm, ...maxMm].join(' ');
    };
    const offHand = [bench.drag.api, bench.reshape.api].map((hand) => hand.subscribe(makeRoom));
    let last = sizeOf();
    const offDocument = bench.document.api.subscribe((now, before) => {
      if (now.committed === before.committed) return;
      const size = sizeOf();
      if (size !== last) fitToView(bench);
      last = size;
    });
    measure(element.clientWidth, element.clientHeight);
    return () => {
      observer.disconnect();
      offView();
      offDocument();
      for (const off of offHand) off();
      presses.stop();
    };
  }, [bench, box]);
  return () => refit.current();
}
