import type { RefObject } from 'react';
import { StageBar } from './StageBar';
import { StageLessons } from './StageLessons';
import { StageVoice } from './StageVoice';

/** What lies over the picture, and its voice: both come after the first paint. */
export default function OverStage({ picture }: { readonly picture: RefObject<HTMLElement | null> }) {
  return (
    <>
      <StageBar />
      <StageVoice picture={picture} />
      <StageLessons picture={picture} />
    </>
  );
}
