import { useCallback, useRef, useSyncExternalStore } from 'react';
import type { LessonBench } from '../../model/lessons/bench';
import type { Estimator } from '../../model/lessons/types';
import type { Bench } from '../../store/bench';
import { follow } from '../following';
import type { SeatOfLesson } from './lessonBench';

/** How a lesson's bench stands, with each change of it. */
export function useNow(seat: SeatOfLesson): LessonBench {
  const last = useRef<LessonBench | null>(null);
  const subscribe = useCallback((listener: () => void) => follow(seat.bench, listener), [seat]);
  return useSyncExternalStore(subscribe, () => {
    const now = seat.now();
    const before = last.current;
    const same =
      before !== null &&
      before.aircraft === now.aircraft &&
      before.fuelFraction === now.fuelFraction &&
      before.attitude === now.attitude &&
      before.positions === now.positions;
    if (!same) last.current = now;
    return last.current ?? now;
  });
}

/** The neutral point as the bench's worker has it; none while it is being worked out, so that no hand has to wait for it. */
export const liveEstimator =
  ({ stability }: Bench): Estimator =>
  () => {
    const { estimate, fresh } = stability.get();
    return fresh ? estimate : null;
  };
