import { advise } from '../model/advice/advise';
import type { Aircraft } from '../model/document/types';
import type { AdviceAsk, AdviceReply } from './adviceMessages';
import { sharedWith } from './sharedWith';

let last: Aircraft | null = null;

addEventListener('message', ({ data: { id, aircraft, given, spoken } }: MessageEvent<AdviceAsk>) => {
  const answer = (): AdviceReply => {
    try {
      last = sharedWith(last, aircraft);
      return { id, ok: true, advice: advise(last, given, spoken) };
    } catch (error) {
      return { id, ok: false, sentence: error instanceof Error ? error.message : String(error) };
    }
  };
  postMessage(answer());
});
