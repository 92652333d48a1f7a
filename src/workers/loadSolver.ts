import type { Vec3 } from '../engine/geometry/types';
import type { Aircraft } from '../model/document/types';
import type { LoadEnvelope } from '../model/loads/loadStates';
import type { LoadAsk, LoadReply } from './loadMessages';

/** The part of a Worker that is needed. */
export interface LoadPort {
  postMessage(ask: LoadAsk): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<LoadReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  onmessageerror?: ((event: MessageEvent) => void) | null;
}

/**
 * Asks a worker for the extremes over all load states, one ask at a time; the worker is opened at the first. One that stops,
 * or whose answer nobody waits for any more, is ended, and the next ask opens another.
 */
export function loadSolver(
  open: () => LoadPort,
): (aircraft: Aircraft, down: Vec3, signal?: AbortSignal) => Promise<LoadEnvelope | null> {
  let port: LoadPort | null = null;
  let lastId = 0;
  const end = () => {
    port?.terminate();
    port = null;
  };
  return (aircraft, down, signal) =>
    new Promise((resolve, reject) => {
      port ??= open();
      lastId += 1;
      const id = lastId;
      const callOff = () => {
        end();
        reject(new Error('The search through the load states was called off.'));
      };
      const settled = () => signal?.removeEventListener('abort', callOff);
      const stopped = (why: string) => {
        settled();
        end();
        reject(new Error(`The worker for the load states stopped${why}`));
      };
      port.onmessage = ({ data }) => {
        if (data.id !== id) return;
        settled();
        if (data.ok) resolve(data.envelope);
        else reject(new Error(`The search through the load states failed: ${data.sentence}`));
      };
      port.onerror = ({ message }) => stopped(message ? `: ${message}` : '.');
      port.onmessageerror = () => stopped(': its answer could not be read.');
      signal?.addEventListener('abort', callOff, { once: true });
      port.postMessage({ id, aircraft, down });
    });
}
