import { useThree } from '@react-three/fiber';
import { type RefObject, useEffect } from 'react';
import { createPiece } from '../store/piece';
import { useBench, useLive } from '../store/react';
import { Airframe } from './airframe/Airframe';
import { Cameras } from './frame/Cameras';
import { ROOT_ROTATION } from './frame/frame';
import { useScenePiece } from './frame/useScenePiece';
import { attachGestures } from './gestures/gestures';
import { Heartbeat } from './Heartbeat';
import { Carried } from './items/Carried';
import { Selection } from './items/Selection';
import { BandSlab } from './marks/BandSlab';
import { CgMark } from './marks/CgMark';
import { LabelPlacer } from './marks/LabelPlacer';
import type { LabelElements } from './marks/Labels';
import type { StabilityElements } from './marks/StabilityOverlay';
import { Mat } from './mat/Mat';
import { usePalette } from './materials/palette';

// The aircraft shows before what is said of it is fetched.
const laterMarks = createPiece(
  () => import('./LaterMarks'),
  (module) => module.LaterMarks,
);

interface StageSceneProps {
  readonly box: RefObject<HTMLElement | null>;
  readonly labels: RefObject<LabelElements>;
  readonly resetFree: RefObject<() => void>;
  readonly refit: () => void;
  readonly onDrag: (reading: string | null) => void;
  readonly marks: RefObject<StabilityElements>;
  readonly fitLabels: RefObject<HTMLElement | null>;
}

/** Everything inside the canvas. */
export function StageScene({ box, labels, resetFree, refit, onDrag, marks, fitLabels }: StageSceneProps) {
  const bench = useBench();
  const palette = usePalette();
  const LaterMarks = useScenePiece(laterMarks, 'The stage’s marks of fit and stability');
  const get = useThree((state) => state.get);
  const setSize = useThree((state) => state.setSize);

  useLive(({ axis }) => {
    const { widthPx, heightPx } = axis.getState();
    const { width, height } = get().size;
    if (widthPx > 0 && (widthPx !== width || heightPx !== height)) setSize(widthPx, heightPx, 0, 0);
  });

  useEffect(() => {
    if (!box.current) return;
    return attachGestures(box.current, {
      bench,
      camera: () => get().camera,
      scene: () => get().scene,
      reset: () => (bench.view.getState().view === 'free' ? resetFree.current() : refit()),
      onDrag,
    });
  }, [bench, box, get, onDrag, refit, resetFree]);

  return (
    <>
      <color attach="background" args={[palette.room]} />
      <hemisphereLight args={['#ffffff', palette.dark ? '#50606a' : '#8fa39c', 1.9]} />
      <directionalLight position={[-900, 2400, 1500]} intensity={1.5} />
      <directionalLight position={[1600, 900, -1200]} intensity={0.35} />
      <Cameras
        onReady={(reset) => {
          resetFree.current = reset;
        }}
      />
      <group rotation={[...ROOT_ROTATION]}>
        <Mat />
        <Airframe />
        <Carried />
        <BandSlab />
        {LaterMarks && <LaterMarks marks={marks} fitLabels={fitLabels} />}
        <Selection />
        <CgMark />
      </group>
      <LabelPlacer elements={labels} marks={marks} />
      <Heartbeat />
    </>
  );
}
