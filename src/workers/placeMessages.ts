import type { RobustAnswer } from '../engine/place/robust';
import type { ArrangeAnswer } from '../engine/place/searchState';
import type { TradeOffPoint } from '../engine/place/tradeOff';
import type { PlaceProblem } from '../engine/place/types';
import type { Lift, WhyNot } from '../engine/place/whyNot';

/** What may be asked of the worker. */
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

export interface PlaceAsk {
  readonly id: number;
  readonly task: PlaceTask;
}

/** From the worker: the best so far any number of times, then the answer or what went wrong. */
export type PlaceReply =
  | { readonly id: number; readonly kind: 'progress'; readonly progress: ArrangeAnswer | TradeOffPoint }
  | { readonly id: number; readonly kind: 'answer'; readonly answer: PlaceAnswers[PlaceTask['task']] }
  | { readonly id: number; readonly kind: 'failed'; readonly sentence: string };
