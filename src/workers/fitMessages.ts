import type { Aircraft } from '../model/document/types';
import type { Entry } from '../model/fit/entryThroughAny';
import type { FittingOrder } from '../model/fit/fittingOrder';

export type FitTask =
  | { readonly task: 'entry'; readonly aircraft: Aircraft; readonly itemId: string }
  | { readonly task: 'order'; readonly aircraft: Aircraft };

/** The answer to each task. */
export interface FitAnswers {
  readonly entry: Entry | null;
  readonly order: FittingOrder;
}

/** To the worker. */
export interface FitAsk {
  readonly id: number;
  readonly task: FitTask;
}

/** From the worker, one for each ask, with its id. */
export type FitReply =
  | { readonly id: number; readonly ok: true; readonly answer: FitAnswers[FitTask['task']] }
  | { readonly id: number; readonly ok: false; readonly sentence: string };
