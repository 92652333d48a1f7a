import { estimateStability } from '../model/stability/estimateStability';
import type { StabilityAsk, StabilityReply } from './stabilityMessages';

addEventListener('message', ({ data: { id, input, detail } }: MessageEvent<StabilityAsk>) => {
  postMessage(reply(id, () => estimateStability(input, detail)));
});

function reply(id: number, answer: () => Extract<StabilityReply, { ok: true }>['answer']): StabilityReply {
  try {
    return { id, ok: true, answer: answer() };
  } catch (error) {
    return { id, ok: false, sentence: error instanceof Error ? error.message : String(error) };
  }
}
