import type { RefObject } from 'react';
import { Handles } from './gestures/Handles';
import type { HandlePlace } from './gestures/handlePlace';
import { TraceHand } from './gestures/TraceHand';
import { SpanNote } from './SpanNote';
import { StageBar } from './StageBar';
import { StageLessons } from './StageLessons';
import { StageVoice } from './StageVoice';

interface OverStageProps {
  readonly picture: RefObject<HTMLElement | null>;
  readonly handles: RefObject<HandlePlace>;
}

/** What lies over the picture, and its voice: both come after the first paint. */
export default function OverStage({ picture, handles }: OverStageProps) {
  return (
    <>
      <Handles place={handles} />
      <StageBar />
      <SpanNote />
      <StageVoice picture={picture} />
      <StageLessons picture={picture} />
      <TraceHand />
    </>
  );
}
