import { type RenderCallback, useFrame } from '@react-three/fiber';
import { useRef } from 'react';
import { useFail } from '../../store/react';

/** Runs with each frame of the stage. A fault goes to the stage's boundary; let through, it would stop every later frame. */
export function useEachFrame(apply: RenderCallback): void {
  const fail = useRef(useFail());
  useFrame((state, deltaS, frame) => {
    try {
      apply(state, deltaS, frame);
    } catch (error) {
      fail.current(error);
    }
  });
}
