import { use, useState } from 'react';
import { useBench } from '../../store/react';
import type { Turn } from '../layout/Turns';
import { OwnBenchContext } from '../ownBench';
import { VerdictPlace } from '../trouble/VerdictPlace';
import { useShortcuts } from '../useShortcuts';
import { WorkBench } from '../WorkBench';

/** The whole bench with the lesson's aircraft on it. */
export function FreePlay() {
  const stage = use(OwnBenchContext)?.stage;
  const [turn, setTurn] = useState<Turn>('stage');
  useLessonKeys();
  return (
    <div className="lesson-freely">
      <VerdictPlace />
      <div className="bench" data-tab={turn}>
        <WorkBench stage={stage} turn={turn} onTurn={setTurn} />
      </div>
    </div>
  );
}

/** The bench's keys, on the lesson's bench; none of them moves anything while it is still. What would save the aircraft says where it goes instead. */
export function useLessonKeys(still = false): void {
  const { notice } = useBench();
  useShortcuts({
    openShortcuts: () => {},
    still,
    save: () =>
      notice.tell({
        about: 'lesson',
        tone: 'done',
        text: 'A lesson keeps your place by itself. To keep its aircraft, try it freely and take it to the bench.',
      }),
  });
}
