/** What goes to a worker: a task, with a number that its replies bear. All of it is plain data. */
export interface Ask<Task> {
  readonly id: number;
  readonly task: Task;
}

/** What comes from a worker: how far it is, any number of times, then the answer or why there is none, in a sentence. */
export type Reply<Answer, Progress = never> =
  | { readonly id: number; readonly kind: 'progress'; readonly progress: Progress }
  | { readonly id: number; readonly kind: 'answer'; readonly answer: Answer }
  | { readonly id: number; readonly kind: 'failed'; readonly sentence: string };

/** The part of a Worker that is needed. */
export interface Port<Task, Answer, Progress = never> {
  postMessage(ask: Ask<Task>): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<Reply<Answer, Progress>>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  onmessageerror?: ((event: MessageEvent) => void) | null;
}
