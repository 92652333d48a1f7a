import { loadEnvelopeOf } from '../model/loads/loadStates';
import type { LoadAsk, LoadReply } from './loadMessages';

addEventListener('message', ({ data: { id, aircraft, down } }: MessageEvent<LoadAsk>) => {
  const answer = (): LoadReply => {
    try {
      return { id, ok: true, envelope: loadEnvelopeOf(aircraft, down) };
    } catch (error) {
      return { id, ok: false, sentence: error instanceof Error ? error.message : String(error) };
    }
  };
  postMessage(answer());
});
