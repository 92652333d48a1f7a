import type { Aircraft } from '../model/document/types';
import type { Entry } from '../model/fit/entryThroughAny';
import type { FitProblem } from '../model/fit/fitProblem';
import type { FittingOrder } from '../model/fit/fittingOrder';
import type { FitAnswer, FitAnswers, FitTask } from './fitTask';
import { type AskWorker, orNull } from './workerClient';

export interface FitSearcher {
  entry(aircraft: Aircraft, itemId: string): Promise<Entry | null>;
  order(aircraft: Aircraft): Promise<FittingOrder | null>;
  whole(aircraft: Aircraft): Promise<readonly FitProblem[]>;
  stop(): void;
}

/** Runs one search at a time: another one, or `stop`, calls it off, and then it gives null. The whole is judged beside it. */
export function fitSearcher(askWorker: AskWorker<FitTask, FitAnswer>): FitSearcher {
  let running: AbortController | null = null;
  const stop = () => running?.abort();
  const ask = <T extends FitTask>(task: T): Promise<FitAnswers[T['task']] | null> => {
    stop();
    running = new AbortController();
    return orNull(askWorker(task, { signal: running.signal }) as Promise<FitAnswers[T['task']]>);
  };
  return {
    entry: (aircraft, itemId) => ask({ task: 'entry', aircraft, itemId }),
    order: (aircraft) => ask({ task: 'order', aircraft }),
    whole: (aircraft) => askWorker({ task: 'whole', aircraft }) as Promise<FitAnswers['whole']>,
    stop,
  };
}
