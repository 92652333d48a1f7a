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

interface StageCanvasProps {
  readonly children: ReactNode;
}

/** The canvas of the stage, filling its box. It draws only when asked to. */
export function StageCanvas({ children }: StageCanvasProps) {
  const bench = useBench();
  const box = useRef<HTMLDivElement>(null);
  const root = useRef<ReconcilerRoot<HTMLCanvasElement>>(null);

  useEffect(() => {
    const place = box.current;
    if (!place) return;
    // A canvas of its own for each mount: one that has lost its context cannot be used again.
    const canvas = document.createElement('canvas');
    place.append(canvas);
    const made = createRoot(canvas);
    root.current = made;
    void made.configure({
      frameloop: 'demand',
      flat: true,
      dpr: [1, 2],
      gl: { antialias: true, powerPreference: 'high-performance' },
      size: { width: place.clientWidth, height: place.clientHeight, top: 0, left: 0 },
    });
    return () => {
      root.current = null;
      made.unmount();
      canvas.remove();
    };
  }, []);

  useEffect(() => {
    root.current?.render(<BenchContext.Provider value={bench}>{children}</BenchContext.Provider>);
  });

  return <div ref={box} className="stage-canvas" />;
}
