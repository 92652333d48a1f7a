import { entryThroughAny } from '../model/fit/entryThroughAny';
import { fittingOrder } from '../model/fit/fittingOrder';
import type { FitAsk, FitReply, FitTask } from './fitMessages';

addEventListener('message', ({ data: { id, task } }: MessageEvent<FitAsk>) => {
  postMessage(reply(id, task));
});

function reply(id: number, task: FitTask): FitReply {
  try {
    const answer =
      task.task === 'entry' ? entryThroughAny(task.aircraft, task.itemId) : fittingOrder(task.aircraft);
    return { id, ok: true, answer };
  } catch (error) {
    return { id, ok: false, sentence: error instanceof Error ? error.message : String(error) };
  }
}
