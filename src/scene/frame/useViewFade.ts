import { type RefObject, useEffect } from 'react';
import { useBench } from '../../store/react';

const FADE_MS = 180;

/** Lets another view come in softly, unless less motion is wanted. */
export function useViewFade(box: RefObject<HTMLElement | null>): void {
  const { view } = useBench();
  useEffect(
    () =>
      view.subscribe((now, before) => {
        if (now.view === before.view || matchMedia('(prefers-reduced-motion: reduce)').matches) return;
        const canvas = box.current?.querySelector('canvas');
        canvas?.animate([{ opacity: 0.25 }, { opacity: 1 }], { duration: FADE_MS, easing: 'ease-out' });
      }),
    [box, view],
  );
}
