import type { Aircraft } from '../model/document/types';
import type { Entry } from '../model/fit/entryThroughAny';
import type { FitProblem } from '../model/fit/fitProblem';
import type { FittingOrder } from '../model/fit/fittingOrder';

/** What the worker for fitting is asked. */
export type FitTask =
  | { readonly task: 'entry'; readonly aircraft: Aircraft; readonly itemId: string }
  | { readonly task: 'order'; readonly aircraft: Aircraft }
  | { readonly task: 'whole'; readonly aircraft: Aircraft };

/** The answer to each task. */
export interface FitAnswers {
  readonly entry: Entry | null;
  readonly order: FittingOrder;
  readonly whole: readonly FitProblem[];
}

export type FitAnswer = FitAnswers[FitTask['task']];
