import { createRoot, extend, type ReconcilerRoot } from '@react-three/fiber';
import { type ReactNode, useEffect, useRef } from 'react';
import {
  Color,
  ConeGeometry,
  DirectionalLight,
  Group,
  HemisphereLight,
  Mesh,
  MeshBasicMaterial,
  MeshStandardMaterial,
  SphereGeometry,
  Sprite,
  SpriteMaterial,
} from 'three';
import { BenchContext, useBench } from '../store/react';
import { SceneBoundary } from './SceneBoundary';
import type { StageFailure } from './stageFailure';

// Only what the stage draws with, so that the rest of three.js stays out of the first load.
extend({
  Color,
  ConeGeometry,
  DirectionalLight,
  Group,
  HemisphereLight,
  Mesh,
  MeshBasicMaterial,
  MeshStandardMaterial,
  SphereGeometry,
  Sprite,
  SpriteMaterial,
});

/** As the renderer asks for them: the context that is tried first is the one that it is given. */
const CONTEXT: WebGLContextAttributes = {
  alpha: true,
  depth: true,
  stencil: false,
  antialias: true,
  powerPreference: 'high-performance',
};

interface StageCanvasProps {
  /** Told why there is no picture, and null when there is one again. */
  readonly onFailure: (failure: StageFailure | null) => void;
  readonly children: ReactNode;
}

/** The canvas of the stage, filling its box. It draws only when asked to. */
export function StageCanvas({ onFailure, children }: StageCanvasProps) {
  const bench = useBench();
  const box = useRef<HTMLDivElement>(null);
  const root = useRef<ReconcilerRoot<HTMLCanvasElement>>(null);
  const tell = useRef(onFailure);

  useEffect(() => {
    const place = box.current;
    if (!place) return;
    tell.current = onFailure;
    // A canvas of its own for each mount: one that has lost its context cannot be used again.
    const canvas = document.createElement('canvas');
    if (!canvas.getContext('webgl2', CONTEXT)) {
      tell.current({ why: 'no graphics' });
      return;
    }
    place.append(canvas);
    // The renderer sets itself up again when they come back, and the heartbeat asks for a frame.
    canvas.addEventListener('webglcontextlost', () => tell.current({ why: 'graphics lost' }));
    canvas.addEventListener('webglcontextrestored', () => tell.current(null));
    const made = createRoot(canvas);
    root.current = made;
    const configured = made.configure({
      frameloop: 'demand',
      flat: true,
      dpr: [1, 2],
      gl: { antialias: true, powerPreference: 'high-performance' },
      size: { width: place.clientWidth, height: place.clientHeight, top: 0, left: 0 },
    });
    configured.catch((error: unknown) => tell.current({ why: 'fault', error }));
    return () => {
      tell.current = () => {};
      root.current = null;
      made.unmount();
      canvas.remove();
    };
  }, [onFailure]);

  useEffect(() => {
    root.current?.render(
      <SceneBoundary onError={(error) => onFailure({ why: 'fault', error })}>
        <BenchContext.Provider value={bench}>{children}</BenchContext.Provider>
      </SceneBoundary>,
    );
  });

  return <div ref={box} className="stage-canvas" />;
}
