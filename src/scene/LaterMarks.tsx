import type { RefObject } from 'react';
import FitMarks from './fit/FitMarks';
import { TipGrips } from './gestures/TipGrips';
import { Ghost } from './items/Ghost';
import { CgHalo } from './marks/CgHalo';
import { InertiaBox } from './marks/InertiaBox';
import { MacMark } from './marks/MacMark';
import { NeutralPointMark } from './marks/NeutralPointMark';
import type { StabilityElements } from './marks/StabilityOverlay';

interface LaterMarksProps {
  readonly marks: RefObject<StabilityElements>;
  readonly fitLabels: RefObject<HTMLElement | null>;
}

/** The marks that say something about the aircraft once it stands there: what they show is worked out later too. */
export function LaterMarks({ marks, fitLabels }: LaterMarksProps) {
  return (
    <>
      <MacMark />
      <TipGrips />
      <FitMarks labels={fitLabels} />
      <Ghost />
      <NeutralPointMark elements={marks} />
      <InertiaBox />
      <CgHalo />
    </>
  );
}
