import type { Vec3 } from '../engine/geometry/types';
import type { Aircraft } from '../model/document/types';
import type { LoadEnvelope } from '../model/loads/loadStates';
import type { LoadAsk, LoadReply } from './loadMessages';

/** The part of a Worker that is needed. */
export interface LoadPort {
  postMessage(ask: LoadAsk): void;
  onmessage: ((event: MessageEvent<LoadReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** Asks a worker for the extremes over all load states, one ask at a time; the worker is opened at the first. */
export function loadSolver(
  open: () => LoadPort,
): (aircraft: Aircraft, down: Vec3) => Promise<LoadEnvelope | null> {
  let port: LoadPort | null = null;
  let lastId = 0;
  return (aircraft, down) =>
    new Promise((resolve, reject) => {
      port ??= open();
      lastId += 1;
      const id = lastId;
      port.onmessage = ({ data }) => {
        if (data.id !== id) return;
        if (data.ok) resolve(data.envelope);
        else reject(new Error(`The search through the load states failed: ${data.sentence}`));
      };
      port.onerror = ({ message }) => {
        port = null;
        reject(new Error(`The worker for the load states stopped${message ? `: ${message}` : '.'}`));
      };
      port.postMessage({ id, aircraft, down });
    });
}
