import type { PlaceAnswers, PlaceProgress, PlaceSolver, PlaceTask } from '../model/place/tasks';
import type { PlaceAsk, PlaceReply } from './placeMessages';

/** The part of a Worker that is needed. */
export interface PlacePort {
  postMessage(ask: PlaceAsk): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<PlaceReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/**
 * Runs placement tasks in workers, one worker for each task under way: a solver that is busy hears nothing, so cancelling
 * ends its worker. A worker that has answered is kept, with the solver loaded, for the next task.
 */
export function placeSolver(open: () => PlacePort): PlaceSolver {
  const idle: PlacePort[] = [];
  let lastId = 0;
  return <T extends PlaceTask>(task: T, onProgress?: (progress: PlaceProgress) => void) => {
    const port = idle.pop() ?? open();
    lastId += 1;
    const id = lastId;
    let cancel = () => {};
    const answer = new Promise<PlaceAnswers[T['task']] | null>((resolve, reject) => {
      cancel = () => {
        if (port.onmessage === null) return;
        port.onmessage = null;
        port.terminate();
        resolve(null);
      };
      const settle = () => {
        port.onmessage = null;
        port.onerror = null;
      };
      port.onmessage = ({ data }) => {
        if (data.id !== id) return;
        if (data.kind === 'progress') {
          onProgress?.(data.progress);
          return;
        }
        settle();
        idle.push(port);
        if (data.kind === 'answer') resolve(data.answer as PlaceAnswers[T['task']]);
        else reject(new Error(`The search for a place failed: ${data.sentence}`));
      };
      port.onerror = ({ message }) => {
        settle();
        port.terminate();
        reject(new Error(`The worker for placing stopped${message ? `: ${message}` : '.'}`));
      };
    });
    port.postMessage({ id, task });
    return { answer, cancel: () => cancel() };
  };
}
