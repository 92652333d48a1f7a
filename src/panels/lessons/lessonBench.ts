import type { LessonBench } from '../../model/lessons/bench';
import type { Lesson, Step } from '../../model/lessons/types';
import { downOf } from '../../model/loads/attitude';
import { type Bench, createBench } from '../../store/bench';
import type { Drag } from '../../store/drag';
import { FIRST_LAYERS, LAYERS, type Layers, LESSONS, type ViewState } from '../../store/viewStore';

type Rail = NonNullable<Step['rail']>;

/** The bench of a lesson: nothing of it is kept, and the person's own is not touched by anything done on it. */
export interface SeatOfLesson {
  readonly bench: Bench;
  /** Holds whatever is dragged to an axis; null lets it go free. */
  holdTo(rail: Rail | null): void;
  /** How the bench stands now. */
  now(): LessonBench;
  /** Puts the bench so, without a step to be undone. */
  putOn(state: LessonBench): void;
  /** Shows the CG and what else the lesson looks at, or nothing that would tell the answer. */
  reveal(shown: boolean): void;
}

const NO_LAYERS: Layers = { ...FIRST_LAYERS, cg: false };

const layersOf = ({ look }: Lesson): Layers =>
  Object.fromEntries(
    LAYERS.map((layer) => [layer, layer === 'cg' || (look?.layers?.includes(layer) ?? false)]),
  ) as unknown as Layers;

const heldAs = ({ fuelFraction, attitude, positions }: LessonBench): Partial<ViewState> => ({
  fuelFraction,
  attitude,
  positions,
  down: downOf(attitude),
  playing: false,
});

/** What the person chose on the page counts here too. */
const chosen = ({ theme, units, strip }: ViewState): Partial<ViewState> => ({ theme, units, strip });

/** A bench for a lesson, beside the person's own. */
export function lessonSeat(main: Bench, lesson: Lesson, start: LessonBench): SeatOfLesson {
  const { look, question } = lesson;
  let rail: Rail | null = null;
  const made = createBench(start.aircraft, {
    ...chosen(main.view.getState()),
    ...heldAs(start),
    view: look?.view ?? 'side',
    layers: NO_LAYERS,
    learned: LESSONS,
    measureFromId: question.from ?? null,
  });
  const bench: Bench = { ...made, drag: railed(made.drag, () => rail) };
  return {
    bench,
    holdTo: (axis) => {
      rail = axis;
    },
    now: () => {
      const { fuelFraction, attitude, positions } = bench.view.getState();
      return { aircraft: bench.document.current(), fuelFraction, attitude, positions };
    },
    putOn: (state) => {
      bench.drag.cancel();
      bench.document.follow(state.aircraft);
      bench.view.setState({ ...heldAs(state), selectedId: null, groupIds: [], hoveredId: null });
    },
    reveal: (shown) => bench.view.setState({ layers: shown ? layersOf(lesson) : NO_LAYERS }),
  };
}

/** Keeps a lesson's bench as the page is: theme, units, height. Returns how to stop. */
export const followPage = (main: Bench, { view }: Bench): (() => void) =>
  main.view.subscribe((now, before) => {
    if (now.theme !== before.theme || now.units !== before.units || now.strip !== before.strip)
      view.setState(chosen(now));
  });

/** A drag that is held to an axis through where the thing was taken up. */
function railed(drag: Drag, railNow: () => Rail | null): Drag {
  return {
    ...drag,
    moveTo: (positionMm) => {
      const rail = railNow();
      const { fromMm } = drag.api.getState();
      if (rail === null || fromMm === null) return drag.moveTo(positionMm);
      const [x, y, z] = fromMm;
      switch (rail) {
        case 'station':
          return drag.moveTo([positionMm[0], y, z]);
        case 'buttline':
          return drag.moveTo([x, positionMm[1], z]);
        case 'waterline':
          return drag.moveTo([x, y, positionMm[2]]);
      }
    },
  };
}
