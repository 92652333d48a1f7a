import type { TradeOffPoint } from '../../engine/place/tradeOff';
import type { Arrangement, PlaceProblem } from '../../engine/place/types';
import type { Lift, WhyNot } from '../../engine/place/whyNot';
import type { Aircraft } from '../document/types';
import type { PlaceSettings } from './placeSettings';
import type { PlaceFound, PlaceOutcome, PlaceRequest } from './searchPlaces';

/** What an aircraft is offered as other choices: what was found for it and what it was found in. */
export interface ChoicesAsk {
  readonly aircraft: Aircraft;
  readonly settings: PlaceSettings;
  readonly problem: PlaceProblem;
  readonly offered: Arrangement;
}

/** What may be asked of the search for places. */
export type PlaceTask =
  | { readonly task: 'search'; readonly request: PlaceRequest; readonly timeMs: number }
  | {
      readonly task: 'why not';
      readonly problem: PlaceProblem;
      readonly lifts: readonly Lift[];
      readonly timeMs: number;
    }
  | {
      readonly task: 'ballast for margin';
      readonly ask: ChoicesAsk;
      readonly points: number;
      readonly timeMs: number;
    }
  | { readonly task: 'ballast for moves'; readonly ask: ChoicesAsk; readonly timeMs: number };

/** The answer to each task. */
export interface PlaceAnswers {
  readonly search: PlaceOutcome;
  readonly 'why not': WhyNot;
  readonly 'ballast for margin': readonly TradeOffPoint[];
  readonly 'ballast for moves': readonly TradeOffPoint[];
}

export type PlaceProgress = PlaceFound | TradeOffPoint;

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
