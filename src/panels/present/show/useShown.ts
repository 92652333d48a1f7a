import { use, useEffect, useMemo, useRef } from 'react';
import { balanceAt } from '../../../model/balance/balance';
import type { Aircraft, Slide } from '../../../model/document/types';
import { downOf, LEVEL_ATTITUDE } from '../../../model/loads/attitude';
import type { ShownSlide, ShownState } from '../../../model/talk/shown';
import { type Bench, createBench } from '../../../store/bench';
import { showState } from '../../../store/bookmark';
import type { Ghost } from '../../../store/placeStore';
import { useBench } from '../../../store/react';
import { LESSONS } from '../../../store/viewStore';
import { OwnBenchContext } from '../../ownBench';
import { ghostOf } from '../../revisions/ghostOf';

/** A bench of its own with the aircraft as a slide has it: nothing that happens on it reaches the one that is worked on. */
export function useShowBench(aircraft: Aircraft): Bench {
  const owner = useBench();
  const ownBench = use(OwnBenchContext);
  const first = useRef(aircraft);
  const bench = useMemo(() => {
    const { units, theme, tilts, measureFromId } = owner.view.getState();
    return createBench(first.current, { units, theme, tilts, measureFromId, learned: LESSONS });
  }, [owner]);
  useEffect(() => ownBench?.start(bench), [bench, ownBench]);
  return bench;
}

/** Keeps a bench as a slide has it, its eye and its ghost too. */
export function useSlideOn(bench: Bench, slide: Slide, state: ShownState, ghost: Ghost | null): void {
  useEffect(() => {
    showState(bench, slide, state);
    bench.place.api.setState({ ghost });
    const look = (flies: boolean) =>
      slide.eye ? bench.eye.ask({ kind: 'look', gaze: slide.eye, flies }) : bench.eye.ask({ kind: 'fit' });
    look(true);
    // Once there is a stage, and for each new size of it: what was to be seen is seen whole.
    return bench.axis.subscribe((now, before) => {
      if (now.widthPx !== before.widthPx || now.heightPx !== before.heightPx)
        requestAnimationFrame(() => look(false));
    });
  }, [bench, slide, state, ghost]);
}

/** Outlines of the other state where the slide wants them in the same picture. */
export function ghostOfSlide(slide: Slide, { now, against }: ShownSlide): Ghost | null {
  if (!against || slide.against?.as !== 'ghost') return null;
  const { aircraft, positions, fuel } = against;
  const down = downOf(slide.attitude ?? LEVEL_ATTITUDE);
  const { cgMm, finite } = balanceAt(aircraft, { fuelFraction: fuel, down, positions });
  return { ...ghostOf(aircraft, now.aircraft), cgMm: finite ? cgMm : null };
}
