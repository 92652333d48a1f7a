import { useThree } from '@react-three/fiber';
import { useCallback, useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { OrthographicCamera, PerspectiveCamera } from 'three';
import { createPiece } from '../../store/piece';
import { useBench, useCommitted, useLive, useView } from '../../store/react';
import { registerElevation } from './elevationCamera';
import { frameAircraft } from './freeCamera';
import type { OrbitRef } from './Orbit';
import { cornersOnce, useGroundMm } from './useGround';
import { useScenePiece } from './useScenePiece';

// The aircraft shows before it can be turned.
const orbitPiece = createPiece(
  () => import('./Orbit'),
  (module) => module.default,
);

interface CamerasProps {
  /** Told how to bring the free view back to where it began. */
  readonly onReady: (resetFree: () => void) => void;
}

/** The free view's camera and its orbit; for the elevations a camera registered with the shared axis. */
export function Cameras({ onReady }: CamerasProps) {
  const view = useView((state) => state.view);
  const bench = useBench();
  const groundMm = useGroundMm();
  const name = useCommitted((aircraft) => aircraft.name);
  const set = useThree((state) => state.set);
  const invalidate = useThree((state) => state.invalidate);
  const { width, height } = useThree((state) => state.size);
  const Orbit = useScenePiece(orbitPiece, 'What turns the free view');
  const orbit: OrbitRef = useRef(null);
  const moved = useRef(false);
  const free = useMemo(() => Object.assign(new PerspectiveCamera(30), { manual: true }), []);
  const square = useMemo(() => Object.assign(new OrthographicCamera(), { manual: true }), []);
  const latest = useRef({ groundMm, aspect: width / height });
  latest.current = { groundMm, aspect: width / height };

  const resetFree = useCallback(() => {
    const look = frameAircraft(free, cornersOnce(bench.document.current()), latest.current.aspect);
    moved.current = false;
    if (orbit.current) {
      orbit.current.target.copy(look);
      orbit.current.update();
    }
    invalidate();
  }, [bench, free, invalidate]);

  useLayoutEffect(() => set({ camera: view === 'free' ? free : square }), [set, view, free, square]);

  // A new aircraft is framed afresh; a new size only where nobody has moved the camera yet.
  useEffect(resetFree, [name, resetFree]);
  useEffect(() => {
    if (moved.current) {
      free.aspect = width / height;
      free.updateProjectionMatrix();
      invalidate();
    } else resetFree();
    onReady(resetFree);
  }, [width, height, free, invalidate, resetFree, onReady]);

  useLive(({ view: looking, axis }) => {
    const { view: now } = looking.getState();
    if (now !== 'free' && axis.getState().widthPx > 0) registerElevation(square, now, axis.getState());
  });

  /** The eye is held above the mat by the angle; what it looks at must not sink below it either. */
  const holdAboveMat = () => {
    const target = orbit.current?.target;
    if (target) target.y = Math.max(target.y, latest.current.groundMm);
  };
  const hold = useCallback(() => {
    moved.current = true;
  }, []);
  if (!Orbit) return null;
  return (
    <Orbit
      orbit={orbit}
      camera={free}
      enabled={view === 'free'}
      onReady={resetFree}
      onStart={hold}
      onChange={holdAboveMat}
    />
  );
}
