import type { Port } from './envelope';

/** Why there is no answer to a task whose signal was given. */
export class CalledOff extends Error {}

export interface WorkerSettings {
  /** What a task is, as a sentence begins: "The search for a way in". */
  readonly search: string;
  /** What the worker is for: "fitting". */
  readonly purpose: string;
  /** A worker that has been asked and says nothing for so long is ended, s. Any word counts, progress too. */
  readonly silentS: number;
}

export interface AskSettings<Progress> {
  readonly onProgress?: ((progress: Progress) => void) | undefined;
  /** Calls the task off. A busy worker hears nothing, so its worker is ended. */
  readonly signal?: AbortSignal | undefined;
}

export type AskWorker<Task, Answer, Progress = never> = (
  task: Task,
  settings?: AskSettings<Progress>,
) => Promise<Answer>;

/**
 * Asks workers, one for each task under way. A worker is opened when none is free, and kept once it has answered.
 * Whatever goes wrong rejects with a sentence and ends the worker, so that the next task opens another; being called off
 * rejects with `CalledOff`.
 */
export function workerClient<Task, Answer, Progress = never>(
  open: () => Port<Task, Answer, Progress>,
  { search, purpose, silentS }: WorkerSettings,
): AskWorker<Task, Answer, Progress> {
  const free: Port<Task, Answer, Progress>[] = [];
  let lastId = 0;
  return (task, { onProgress, signal } = {}) =>
    new Promise((resolve, reject) => {
      const calledOff = () => new CalledOff(`${search} was called off.`);
      if (signal?.aborted) {
        reject(calledOff());
        return;
      }
      const port = free.pop() ?? open();
      lastId += 1;
      const id = lastId;
      let timer: ReturnType<typeof setTimeout> | undefined;
      const settle = () => {
        clearTimeout(timer);
        signal?.removeEventListener('abort', callOff);
        port.onmessage = null;
        port.onerror = null;
        port.onmessageerror = null;
      };
      const end = (error: Error) => {
        settle();
        port.terminate();
        reject(error);
      };
      const stopped = (why: string) => end(new Error(`The worker for ${purpose} stopped: ${why}.`));
      const callOff = () => end(calledOff());
      const wait = () => {
        clearTimeout(timer);
        timer = setTimeout(() => stopped(`it said nothing for ${silentS} s`), silentS * 1000);
      };
      port.onmessage = ({ data }) => {
        if (data.id !== id) return;
        if (data.kind === 'progress') {
          wait();
          onProgress?.(data.progress);
          return;
        }
        settle();
        free.push(port);
        if (data.kind === 'answer') resolve(data.answer);
        else reject(new Error(`${search} failed: ${data.sentence}`));
      };
      port.onerror = (event) => {
        event.preventDefault?.();
        stopped(event.message || 'its file could not be fetched, or it broke off');
      };
      port.onmessageerror = () => stopped('its answer could not be read');
      signal?.addEventListener('abort', callOff, { once: true });
      wait();
      port.postMessage({ id, task });
    });
}

/** What was called off gives null. */
export const orNull = <T>(answer: Promise<T>): Promise<T | null> =>
  answer.catch((error: unknown) => {
    if (error instanceof CalledOff) return null;
    throw error;
  });
