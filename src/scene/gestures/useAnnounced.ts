import { type RefObject, useEffect } from 'react';
import { useBench } from '../../store/react';
import { movedReading } from './stageReadings';

/** Says aloud where a thing stands once it has been moved, by whatever means, and let go. */
export function useAnnounced(spoken: RefObject<HTMLElement | null>): void {
  const bench = useBench();
  useEffect(() => {
    return bench.drag.api.subscribe(({ itemId }, before) => {
      const moved = before.itemId;
      if (itemId !== null || moved === null) return;
      const steps = bench.document.api.getState().past.length;
      // The hand opens before the step is written.
      queueMicrotask(() => {
        if (bench.document.api.getState().past.length === steps || !spoken.current) return;
        spoken.current.textContent = movedReading(bench, moved, before.alongIds.length) ?? '';
      });
    });
  }, [bench, spoken]);
}
