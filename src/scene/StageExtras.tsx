import { useThree } from '@react-three/fiber';
import { type RefObject, useEffect, useRef } from 'react';
import { useBench } from '../store/react';
import { PictureServer } from './export/PictureServer';
import FitMarks from './fit/FitMarks';
import type { EyeControl } from './frame/Cameras';
import { ROOT_ROTATION } from './frame/frame';
import { attachGestures } from './gestures/gestures';
import { HandlePlacer } from './gestures/HandlePlacer';
import type { HandlePlace } from './gestures/handlePlace';
import { attachStageKeys } from './gestures/stageKeys';
import { TipGrips } from './gestures/TipGrips';
import { Ghost } from './items/Ghost';
import { MeshInHand } from './items/MeshInHand';
import { CgHalo } from './marks/CgHalo';
import { InertiaBox } from './marks/InertiaBox';
import { LabelPlacer } from './marks/LabelPlacer';
import type { LabelPlace } from './marks/Labels';
import { MacMark } from './marks/MacMark';
import { NeutralPointMark } from './marks/NeutralPointMark';
import type { FitWords } from './marks/stageWords';
import { TracePlane } from './mat/TracePlane';

interface StageExtrasProps {
  readonly box: RefObject<HTMLElement | null>;
  readonly labels: RefObject<LabelPlace>;
  readonly handles: RefObject<HandlePlace>;
  readonly eye: RefObject<EyeControl | null>;
  readonly onDrag: (reading: string | null) => void;
}

/** The hand on the stage, and what the stage says and marks on the aircraft: fetched after the aircraft shows. */
export default function StageExtras({ box, labels, handles, eye, onDrag }: StageExtrasProps) {
  const bench = useBench();
  const get = useThree((state) => state.get);
  const fitWords = useRef<FitWords>(null);
  useEffect(() => {
    if (!box.current) return;
    const offGestures = attachGestures(box.current, {
      bench,
      camera: () => get().camera,
      eye: () => eye.current,
      onDrag,
    });
    const offKeys = attachStageKeys(box.current, bench);
    return () => {
      offGestures();
      offKeys();
    };
  }, [bench, box, eye, get, onDrag]);

  return (
    <>
      <group rotation={[...ROOT_ROTATION]}>
        <TracePlane />
        <MacMark />
        <TipGrips />
        <FitMarks words={fitWords} />
        <Ghost />
        <MeshInHand />
        <NeutralPointMark />
        <InertiaBox />
        <CgHalo />
      </group>
      <PictureServer />
      <LabelPlacer box={box} place={labels} fitWords={fitWords} />
      <HandlePlacer place={handles} />
    </>
  );
}
