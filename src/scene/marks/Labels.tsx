import type { RefObject } from 'react';

/** Where the scene writes its words: a pool of spans, their leaders, and the ring of the neutral point. */
export interface LabelPlace {
  words: HTMLElement | null;
  leaders: SVGPathElement | null;
  neutralPoint: HTMLElement | null;
}

interface LabelsProps {
  readonly place: RefObject<LabelPlace>;
}

/** An open ring with a cross, on the very place. */
const SIGN = 'M0-7A7 7 0 1 1 0 7A7 7 0 1 1 0-7M-12 0H12M0-12V12';

/** Over the stage: all words, which the scene keeps apart. */
export function Labels({ place }: LabelsProps) {
  return (
    <div className="stage-labels" aria-hidden="true">
      <span
        className="stage-np"
        data-testid="stage-neutral-point"
        ref={(element) => {
          place.current.neutralPoint = element;
        }}
      >
        <svg viewBox="-14 -14 28 28" width="28" height="28" aria-hidden="true">
          <path className="stage-np-halo" d={SIGN} />
          <path d={SIGN} />
        </svg>
      </span>
      <svg className="stage-leaders" aria-hidden="true">
        <path
          ref={(element) => {
            place.current.leaders = element;
          }}
        />
      </svg>
      <div
        data-testid="stage-words"
        ref={(element) => {
          place.current.words = element;
        }}
      />
    </div>
  );
}
