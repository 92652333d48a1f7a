import { type RefObject, useEffect, useRef } from 'react';
import { fitElevation } from '../../interaction/elevation';
import type { Bench } from '../../store/bench';
import { useBench } from '../../store/react';
import { extentOnce } from './useGround';

const fit = ({ document, axis, view }: Bench) =>
  axis.setState((axes) =>
    fitElevation(extentOnce(document.api.getState().committed), view.getState().view, axes),
  );

/**
 * Measures the stage's box, and keeps the shared axis fitted to it: for a new size, another view or an
 * aircraft of another size. Returns how to fit it anew.
 */
export function useStageBox(box: RefObject<HTMLElement | null>): () => void {
  const bench = useBench();
  const refit = useRef(() => fit(bench));
  refit.current = () => fit(bench);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const measure = (widthPx: number, heightPx: number) => {
      const { widthPx: w, heightPx: h } = bench.axis.getState();
      if (widthPx <= 0 || heightPx <= 0 || (w === widthPx && h === heightPx)) return;
      bench.axis.setState({ widthPx, heightPx });
      fit(bench);
    };
    const observer = new ResizeObserver(([entry]) => {
      if (entry) measure(entry.contentRect.width, entry.contentRect.height);
    });
    observer.observe(element);
    const offView = bench.view.subscribe((now, before) => {
      if (now.view !== before.view) fit(bench);
    });
    const sizeOf = () => {
      const { minMm, maxMm } = extentOnce(bench.document.api.getState().committed);
      return [...minMm, ...maxMm].join(' ');
    };
    let known = sizeOf();
    const offDocument = bench.document.api.subscribe((now, before) => {
      if (now.committed === before.committed) return;
      const size = sizeOf();
      if (size !== known) fit(bench);
      known = size;
    });
    measure(element.clientWidth, element.clientHeight);
    return () => {
      observer.disconnect();
      offView();
      offDocument();
    };
  }, [bench, box]);
  return () => refit.current();
}
