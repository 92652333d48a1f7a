import { useLayoutEffect } from 'react';
import type { Bench } from '../store/bench';
import { useBench, useLive } from '../store/react';

/** Writes to a drawing by hand: with every change of the bench, and after React has made new parts of it. */
export function useDrawn(apply: (bench: Bench) => void): void {
  const bench = useBench();
  useLive(apply);
  useLayoutEffect(() => apply(bench));
}
