import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import type { WebGLInfo } from 'three';
import { useBench, useLive } from '../store/react';
import { usePalette } from './materials/palette';

declare global {
  interface HTMLCanvasElement {
    /** What the stage's renderer has drawn and holds, for whoever wants to see that it rests and leaks nothing. */
    drawn?: WebGLInfo;
  }
}

/** Asks for a frame whenever anything that is drawn has changed; at rest there are none. */
export function Heartbeat() {
  const invalidate = useThree((state) => state.invalidate);
  const gl = useThree((state) => state.gl);
  const { drag } = useBench();
  const palette = usePalette();
  useLive(() => invalidate());
  useEffect(() => drag.api.subscribe(() => invalidate()), [drag, invalidate]);
  useEffect(() => invalidate(), [palette, invalidate]);
  useEffect(() => {
    const canvas = gl.domElement;
    canvas.drawn = gl.info;
    // Renderer and frame count start again with the graphics.
    const drawAgain = () => {
      canvas.drawn = gl.info;
      invalidate();
    };
    canvas.addEventListener('webglcontextrestored', drawAgain);
    return () => canvas.removeEventListener('webglcontextrestored', drawAgain);
  }, [gl, invalidate]);
  return null;
}
