import { useThree } from '@react-three/fiber';
import { type RefObject, useRef } from 'react';
import { createPiece } from '../store/piece';
import { useLive } from '../store/react';
import { Airframe } from './airframe/Airframe';
import { Cameras, type EyeControl } from './frame/Cameras';
import { ROOT_ROTATION } from './frame/frame';
import { TiltContext, useTiltStore } from './frame/tilt';
import { useScenePiece } from './frame/useScenePiece';
import type { HandlePlace } from './gestures/handlePlace';
import { Heartbeat } from './Heartbeat';
import { Carried } from './items/Carried';
import { Selection } from './items/Selection';
import { BandSlab } from './marks/BandSlab';
import { CgMark } from './marks/CgMark';
import type { LabelPlace } from './marks/Labels';
import { Mat } from './mat/Mat';
import { usePalette } from './materials/palette';
import { useCut } from './materials/useCut';
import { useKeptPrograms } from './materials/useKeptPrograms';

// The aircraft shows before what is said of it is fetched.
const stageExtras = createPiece(
  () => import('./StageExtras'),
  (module) => module.default,
);

interface StageSceneProps {
  readonly box: RefObject<HTMLElement | null>;
  readonly labels: RefObject<LabelPlace>;
  readonly handles: RefObject<HandlePlace>;
  readonly onDrag: (reading: string | null) => void;
}

/** Everything inside the canvas. */
export function StageScene({ box, labels, handles, onDrag }: StageSceneProps) {
  const palette = usePalette();
  const StageExtras = useScenePiece(stageExtras, 'The hand on the stage and its marks');
  const get = useThree((state) => state.get);
  const setSize = useThree((state) => state.setSize);
  const invalidate = useThree((state) => state.invalidate);
  const tilt = useTiltStore(invalidate);
  const eye = useRef<EyeControl>(null);
  useCut();
  useKeptPrograms();

  useLive(({ axis }) => {
    const { widthPx, heightPx } = axis.getState();
    const { width, height } = get().size;
    if (widthPx > 0 && (widthPx !== width || heightPx !== height)) setSize(widthPx, heightPx, 0, 0);
  });

  return (
    <TiltContext value={tilt}>
      <color attach="background" args={[palette.room]} />
      <hemisphereLight args={['#ffffff', palette.dark ? '#46565c' : '#8fa39c', palette.dark ? 1.7 : 1.85]} />
      <directionalLight position={[-900, 2400, 1500]} intensity={1.6} />
      <directionalLight position={[1600, 900, -1200]} intensity={palette.dark ? 0.6 : 0.35} />
      <Cameras control={eye} />
      <group rotation={[...ROOT_ROTATION]}>
        <Mat />
        <Airframe />
        <Carried />
        <BandSlab />
        <Selection />
        <CgMark />
      </group>
      {StageExtras && <StageExtras box={box} labels={labels} handles={handles} eye={eye} onDrag={onDrag} />}
      <Heartbeat />
    </TiltContext>
  );
}
