import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { useBench, useLive } from '../store/react';
import { usePalette } from './palette';

/** Asks for a frame whenever anything that is drawn has changed; at rest there are none. */
export function Heartbeat() {
  const invalidate = useThree((state) => state.invalidate);
  const { drag } = useBench();
  const palette = usePalette();
  useLive(() => invalidate());
  useEffect(() => drag.api.subscribe(() => invalidate()), [drag, invalidate]);
  useEffect(() => invalidate(), [palette, invalidate]);
  return null;
}
