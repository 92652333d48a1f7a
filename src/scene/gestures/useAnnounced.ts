import { type RefObject, useEffect } from 'react';
import { useBench } from '../../store/react';
import { movedReading } from './stageReadings';

/** Says aloud where a thing stands once it has been moved, by whatever means, and let go. */
export function useAnnounced(spoken: RefObject<HTMLElement | null>): void {
  const bench = useBench();
  useEffect(() => {
    let inHand: string | null = null;
    return bench.drag.api.subscribe(({ itemId }, before) => {
      if (itemId !== null) {
        inHand = itemId;
        return;
      }
      const moved = inHand ?? before.itemId;
      inHand = null;
      if (!moved) return;
      const steps = bench.document.api.getState().past.length;
      // The hand opens before the step is written.
      queueMicrotask(() => {
        if (bench.document.api.getState().past.length === steps || !spoken.current) return;
        spoken.current.textContent = movedReading(bench, moved) ?? '';
      });
    });
  }, [bench, spoken]);
}
