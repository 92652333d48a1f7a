import { type RefObject, useRef } from 'react';
import { useLive } from '../store/react';
import { stageSummary } from './gestures/stageReadings';
import { useAnnounced } from './gestures/useAnnounced';

interface StageVoiceProps {
  readonly picture: RefObject<HTMLElement | null>;
}

/** The stage for those who hear it: what the picture shows, and where a thing stands once it has been moved. */
export function StageVoice({ picture }: StageVoiceProps) {
  const spoken = useRef<HTMLDivElement>(null);
  useLive((bench) => {
    // What is read of the picture follows once the hand rests: with each move it is of no use.
    if (bench.document.api.getState().preview) return;
    const summary = stageSummary(bench);
    if (picture.current?.getAttribute('aria-label') !== summary) {
      picture.current?.setAttribute('aria-label', summary);
    }
  });
  useAnnounced(spoken);
  return <div ref={spoken} className="unseen" role="status" aria-live="polite" data-testid="stage-said" />;
}
