import type { Advice } from '../model/advice/advise';
import type { Spoken } from '../model/advice/figures';
import type { Aircraft } from '../model/document/types';
import type { Given } from '../model/judgement/judgeFully';
import type { AdviceAsk, AdviceReply } from './adviceMessages';

/** The part of a Worker that is needed. */
export interface AdvicePort {
  postMessage(ask: AdviceAsk): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<AdviceReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** Asks a worker for advice, one ask at a time; the worker is opened at the first. */
export function adviceSolver(
  open: () => AdvicePort,
): (aircraft: Aircraft, given: Given, spoken: Spoken) => Promise<Advice> {
  let port: AdvicePort | null = null;
  let lastId = 0;
  return (aircraft, given, spoken) =>
    new Promise((resolve, reject) => {
      port ??= open();
      lastId += 1;
      const id = lastId;
      port.onmessage = ({ data }) => {
        if (data.id !== id) return;
        if (data.ok) resolve(data.advice);
        else reject(new Error(`The search for a remedy failed: ${data.sentence}`));
      };
      port.onerror = ({ message }) => {
        port = null;
        reject(new Error(`The worker for remedies stopped${message ? `: ${message}` : '.'}`));
      };
      port.postMessage({ id, aircraft, given, spoken });
    });
}
