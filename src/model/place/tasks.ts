import type { RobustAnswer } from '../../engine/place/robust';
import type { ArrangeAnswer } from '../../engine/place/searchState';
import type { TradeOffPoint } from '../../engine/place/tradeOff';
import type { PlaceProblem } from '../../engine/place/types';
import type { Lift, WhyNot } from '../../engine/place/whyNot';

/** What may be asked of the search for places. */
export type PlaceTask =
  | { readonly task: 'arrange'; readonly problem: PlaceProblem; readonly timeMs: number }
  | {
      readonly task: 'why not';
      readonly problem: PlaceProblem;
      readonly lifts: readonly Lift[];
      readonly timeMs: number;
    }
  | {
      readonly task: 'ballast for margin';
      readonly problem: PlaceProblem;
      readonly points: number;
      readonly timeMs: number;
    }
  | { readonly task: 'ballast for moves'; readonly problem: PlaceProblem; readonly timeMs: number }
  | {
      readonly task: 'surely';
      readonly problem: PlaceProblem;
      readonly sigmaMm: number;
      readonly probability: number;
      readonly timeMs: number;
    };

/** The answer to each task. */
export interface PlaceAnswers {
  readonly arrange: ArrangeAnswer;
  readonly 'why not': WhyNot;
  readonly 'ballast for margin': readonly TradeOffPoint[];
  readonly 'ballast for moves': readonly TradeOffPoint[];
  readonly surely: RobustAnswer;
}

export type PlaceProgress = ArrangeAnswer | TradeOffPoint;

/** A task under way. */
export interface PlaceRun<T extends PlaceTask['task']> {
  /** Null when it was cancelled: what was last told as progress is then the best so far. */
  readonly answer: Promise<PlaceAnswers[T] | null>;
  cancel(): void;
}

/** Runs a task elsewhere. */
export type PlaceSolver = <T extends PlaceTask>(
  task: T,
  onProgress?: (progress: PlaceProgress) => void,
) => PlaceRun<T['task']>;
