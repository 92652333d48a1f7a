import type { PlaceAnswers, PlaceProgress, PlaceTask } from '../model/place/tasks';

export interface PlaceAsk {
  readonly id: number;
  readonly task: PlaceTask;
}

/** From the worker: the best so far any number of times, then the answer or what went wrong. */
export type PlaceReply =
  | { readonly id: number; readonly kind: 'progress'; readonly progress: PlaceProgress }
  | { readonly id: number; readonly kind: 'answer'; readonly answer: PlaceAnswers[PlaceTask['task']] }
  | { readonly id: number; readonly kind: 'failed'; readonly sentence: string };
