import { use, useMemo } from 'react';
import type { Aircraft, Slide } from '../../../model/document/types';
import { shownSlide } from '../../../model/talk/shown';
import type { Bench } from '../../../store/bench';
import type { Ghost } from '../../../store/placeStore';
import { BenchContext } from '../../../store/react';
import { OwnBenchContext } from '../../ownBench';
import { useReadings } from '../../readings';
import { useBurnPlay } from './burnPlay';
import { Hand } from './Hand';
import { LargeFigures } from './LargeFigures';
import { ghostOfSlide, useShowBench, useSlideOn } from './useShown';

interface SlideShownProps {
  readonly aircraft: Aircraft;
  readonly slide: Slide;
  /** Counts how often its burn was asked for again. */
  readonly round: number;
  readonly pointer: boolean;
  readonly onSwipe: (by: 1 | -1) => void;
  /** The bench that the slide is on. */
  readonly bench: Bench;
}

/** A slide: its picture, or two of them, its title, and its figures large. */
export function SlideShown({ aircraft, slide, round, pointer, onSwipe, bench }: SlideShownProps) {
  const shown = useMemo(() => shownSlide(aircraft, slide), [aircraft, slide]);
  const ghost = useMemo(() => ghostOfSlide(slide, shown), [slide, shown]);
  useSlideOn(bench, slide, shown.now, ghost);
  const { against } = slide;
  const beside = against?.as === 'beside' && shown.against ? shown.against : null;
  useBurnPlay(bench, slide, round);
  return (
    <div className="show-slide" data-beside={beside !== null || undefined}>
      <div className="show-pictures">
        <figure>
          <BenchContext.Provider value={bench}>
            <Picture />
            <LargeFigures slide={slide} />
          </BenchContext.Provider>
          {beside && <figcaption>Now</figcaption>}
          {ghost && against && <GhostCaption ghost={ghost} name={against.name} />}
        </figure>
        {beside && against && (
          <Beside key={slide.id} slide={slide} state={beside} name={against.name} round={round} />
        )}
        <Hand pointer={pointer} onSwipe={onSwipe} />
      </div>
      {shown.missing.length > 0 && (
        <p className="show-missing" role="status">
          {shown.missing.join(' ')}
        </p>
      )}
    </div>
  );
}

/** What the outlines are, and where the CG is with things there. */
function GhostCaption({ ghost, name }: { readonly ghost: Ghost; readonly name: string }) {
  const say = useReadings();
  return (
    <figcaption>
      Outlines: {name}
      {ghost.cgMm && `, CG ${say.stationFine(ghost.cgMm[0])}`}
    </figcaption>
  );
}

/** The stage, which whoever puts the page together hands in. */
function Picture() {
  return <div className="show-stage">{use(OwnBenchContext)?.stage}</div>;
}

interface BesideProps {
  readonly slide: Slide;
  readonly state: NonNullable<ReturnType<typeof shownSlide>['against']>;
  readonly name: string;
  readonly round: number;
}

/** The other state in a picture of its own, looked at the same way. */
function Beside({ slide, state, name, round }: BesideProps) {
  const bench = useShowBench(state.aircraft);
  // The burn is played from what this state has in its tanks.
  const asThere = useMemo((): Slide => ({ ...slide, fuel: state.fuel }), [slide, state]);
  useSlideOn(bench, asThere, state, null);
  useBurnPlay(bench, asThere, round);
  return (
    <figure>
      <BenchContext.Provider value={bench}>
        <Picture />
        <LargeFigures slide={slide} />
      </BenchContext.Provider>
      <figcaption>{name}</figcaption>
    </figure>
  );
}
