import { type RefObject, useRef } from 'react';
import FitMarks from './fit/FitMarks';
import { ROOT_ROTATION } from './frame/frame';
import { TipGrips } from './gestures/TipGrips';
import { Ghost } from './items/Ghost';
import { CgHalo } from './marks/CgHalo';
import { InertiaBox } from './marks/InertiaBox';
import { LabelPlacer } from './marks/LabelPlacer';
import type { LabelPlace } from './marks/Labels';
import { MacMark } from './marks/MacMark';
import { NeutralPointMark } from './marks/NeutralPointMark';
import type { FitWords } from './marks/stageWords';

interface StageExtrasProps {
  readonly box: RefObject<HTMLElement | null>;
  readonly labels: RefObject<LabelPlace>;
}

/** What the stage says and marks on the aircraft, fetched after the aircraft shows. */
export default function StageExtras({ box, labels }: StageExtrasProps) {
  const fitWords = useRef<FitWords>(null);
  return (
    <>
      <group rotation={[...ROOT_ROTATION]}>
        <MacMark />
        <TipGrips />
        <FitMarks words={fitWords} />
        <Ghost />
        <NeutralPointMark />
        <InertiaBox />
        <CgHalo />
      </group>
      <LabelPlacer box={box} place={labels} fitWords={fitWords} />
    </>
  );
}
