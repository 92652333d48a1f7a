import type { StabilityAnswer, StabilityDetail, StabilityInput } from '../model/stability/stability';
import type { StabilityAsk, StabilityReply } from './stabilityMessages';

/** The part of a Worker that is needed. */
export interface StabilityPort {
  postMessage(ask: StabilityAsk): void;
  onmessage: ((event: MessageEvent<StabilityReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/**
 * Asks a worker for estimates and matches replies to asks by id. The worker is opened at the first ask.
 * Whatever goes wrong in it rejects the promise with a sentence.
 */
export function stabilitySolver(
  open: () => StabilityPort,
): (input: StabilityInput, detail: StabilityDetail) => Promise<StabilityAnswer> {
  const waiting = new Map<number, Asker>();
  let port: StabilityPort | null = null;
  let lastId = 0;

  const opened = () => {
    const made = open();
    made.onmessage = ({ data }) => {
      const asker = waiting.get(data.id);
      waiting.delete(data.id);
      if (data.ok) asker?.resolve(data.answer);
      else asker?.reject(new Error(`The estimate of the neutral point failed: ${data.sentence}`));
    };
    made.onerror = ({ message }) => {
      const error = new Error(`The worker for the neutral point stopped${message ? `: ${message}` : '.'}`);
      for (const asker of waiting.values()) asker.reject(error);
      waiting.clear();
      port = null;
    };
    return made;
  };

  return (input, detail) =>
    new Promise((resolve, reject) => {
      port ??= opened();
      lastId += 1;
      waiting.set(lastId, { resolve, reject });
      port.postMessage({ id: lastId, input, detail });
    });
}

interface Asker {
  readonly resolve: (answer: StabilityAnswer) => void;
  readonly reject: (error: Error) => void;
}
