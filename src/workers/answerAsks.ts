import type { Ask, Reply } from './envelope';

/** Answers whatever is asked of the worker that this runs in; what is thrown becomes a sentence. */
export function answerAsks<Task, Answer, Progress = never>(
  work: (task: Task, onProgress: (progress: Progress) => void) => Answer | Promise<Answer>,
): void {
  addEventListener('message', async ({ data: { id, task } }: MessageEvent<Ask<Task>>) => {
    const post = (reply: Reply<Answer, Progress>) => postMessage(reply);
    try {
      const answer = await work(task, (progress) => post({ id, kind: 'progress', progress }));
      post({ id, kind: 'answer', answer });
    } catch (error) {
      post({ id, kind: 'failed', sentence: error instanceof Error ? error.message : String(error) });
    }
  });
}
