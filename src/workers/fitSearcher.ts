import type { Aircraft } from '../model/document/types';
import type { Entry } from '../model/fit/entryThroughAny';
import type { FittingOrder } from '../model/fit/fittingOrder';
import type { FitAnswers, FitAsk, FitReply, FitTask } from './fitMessages';

/** The part of a Worker that is needed. */
export interface FitPort {
  postMessage(ask: FitAsk): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FitReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

export interface FitSearcher {
  entry(aircraft: Aircraft, itemId: string): Promise<Entry | null>;
  order(aircraft: Aircraft): Promise<FittingOrder | null>;
  stop(): void;
}

interface Run {
  readonly port: FitPort;
  readonly giveUp: () => void;
}

/**
 * Runs one search at a time in a worker. A busy worker hears nothing, so another search or `stop` ends it, and what
 * was asked of it gives null. A worker that has answered is kept. Whatever goes wrong rejects with a sentence.
 */
export function fitSearcher(open: () => FitPort): FitSearcher {
  let idle: FitPort | null = null;
  let run: Run | null = null;
  let lastId = 0;

  const stop = () => {
    run?.port.terminate();
    run?.giveUp();
    run = null;
  };

  const ask = <T extends FitTask>(task: T) =>
    new Promise<FitAnswers[T['task']] | null>((resolve, reject) => {
      stop();
      const port = idle ?? open();
      idle = null;
      lastId += 1;
      const id = lastId;
      run = { port, giveUp: () => resolve(null) };
      port.onmessage = ({ data }) => {
        if (data.id !== id || run?.port !== port) return;
        run = null;
        idle = port;
        if (data.ok) resolve(data.answer as FitAnswers[T['task']]);
        else reject(new Error(`The search for a way in failed: ${data.sentence}`));
      };
      port.onerror = ({ message }) => {
        if (run?.port === port) run = null;
        port.terminate();
        reject(new Error(`The worker for fitting stopped${message ? `: ${message}` : '.'}`));
      };
      port.postMessage({ id, task });
    });

  return {
    entry: (aircraft, itemId) => ask({ task: 'entry', aircraft, itemId }),
    order: (aircraft) => ask({ task: 'order', aircraft }),
    stop,
  };
}
