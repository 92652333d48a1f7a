import { useEffect } from 'react';
import type { Bench } from '../../store/bench';
import { useBench, useView } from '../../store/react';
import { burnClock, endOf, fractionAt, timeOfFraction } from './burnClock';

export const clockOf = ({ document, balance }: Bench) =>
  burnClock(document.current().fuel, balance.get().usableMl);

/** When the burn stands at, s; its end when the profile never draws so much. */
export function timeNow(bench: Bench): number {
  const clock = clockOf(bench);
  return clock ? (timeOfFraction(clock, bench.view.getState().fuelFraction) ?? endOf(clock)) : 0;
}

/** While playing, runs the burn `speed` times as fast as life, frame by frame, and stops at its end. */
export function usePlayback(speed: number): void {
  const bench = useBench();
  const playing = useView((view) => view.playing);
  useEffect(() => {
    if (!playing) return;
    const begin = clockOf(bench);
    if (!begin) return bench.view.setState({ playing: false });
    // Kept here: the fuel alone does not tell the time while nothing is drawn.
    let atS = timeNow(bench);
    if (atS >= endOf(begin) - 1e-6) atS = 0;
    let lastMs: number | null = null;
    let written = Number.NaN;
    let frame = requestAnimationFrame(function run(nowMs) {
      const clock = clockOf(bench);
      if (!clock) return bench.view.setState({ playing: false });
      const shown = bench.view.getState().fuelFraction;
      if (!Number.isNaN(written) && shown !== written) atS = timeNow(bench);
      atS = Math.min(endOf(clock), atS + (lastMs === null ? 0 : ((nowMs - lastMs) / 1000) * speed));
      lastMs = nowMs;
      written = fractionAt(clock, atS);
      bench.view.setState({ fuelFraction: written, playing: atS < endOf(clock) });
      if (atS < endOf(clock)) frame = requestAnimationFrame(run);
    });
    return () => cancelAnimationFrame(frame);
  }, [bench, playing, speed]);
}
