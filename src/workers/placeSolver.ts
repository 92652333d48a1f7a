import type { PlaceAnswers, PlaceProgress, PlaceSolver, PlaceTask } from '../model/place/tasks';
import { type AskWorker, orNull } from './workerClient';

export type PlaceAnswer = PlaceAnswers[PlaceTask['task']];

/** Runs placement tasks in workers, each with a way to cancel it; a cancelled one gives null. */
export const placeSolver =
  (askWorker: AskWorker<PlaceTask, PlaceAnswer, PlaceProgress>): PlaceSolver =>
  <T extends PlaceTask>(task: T, onProgress?: (progress: PlaceProgress) => void) => {
    const running = new AbortController();
    const answer = askWorker(task, { onProgress, signal: running.signal });
    return { answer: orNull(answer as Promise<PlaceAnswers[T['task']]>), cancel: () => running.abort() };
  };
