import { useEffect } from 'react';
import type { Slide } from '../../../model/document/types';
import type { Bench } from '../../../store/bench';

/** Before the tanks begin to empty, ms: the picture is looked at first. */
const WAIT_MS = 900;

type Burning = Pick<Slide, 'fuel' | 'burn'>;

/** Usable liquid left when the burn has been played; tanks do not fill by burning. */
const endOf = ({ fuel, burn }: Burning): number => (burn ? Math.min(fuel, burn.to) : fuel);

/** Usable liquid left so many ms after the slide came, 1 full to 0 dry. */
export function fuelAt(slide: Burning, afterMs: number): number {
  const { fuel, burn } = slide;
  if (!burn) return fuel;
  const share = Math.min(1, Math.max(0, (afterMs - WAIT_MS) / 1000 / burn.seconds));
  return share === 1 ? endOf(slide) : fuel + (endOf(slide) - fuel) * share;
}

/** How long a slide is shown where nobody turns it, ms. */
export const stayMs = ({ burn }: Pick<Slide, 'burn'>): number =>
  burn ? WAIT_MS + burn.seconds * 1000 + 1500 : 4000;

/** Plays a slide's burn from its beginning, again for each `round`; with less motion its end is shown. */
export function useBurnPlay(bench: Bench, slide: Slide, round: number): void {
  useEffect(() => {
    if (!slide.burn) return;
    const show = (fuelFraction: number) => bench.view.setState({ fuelFraction, playing: false });
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) return show(endOf(slide));
    const began = performance.now();
    let frame = requestAnimationFrame(function run(now) {
      const fuel = fuelAt(slide, now - began);
      show(fuel);
      if (fuel !== endOf(slide)) frame = requestAnimationFrame(run);
    });
    return () => cancelAnimationFrame(frame);
  }, [bench, slide, round]);
}
