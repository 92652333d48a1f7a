import type { Balance } from '../../model/balance/balance';
import { attitudeName, isLevel } from '../../model/loads/attitude';
import type { LoadEnvelope } from '../../model/loads/loadStates';
import { type Verdict, verdict } from '../../model/words/verdict';
import type { Bench } from '../../store/bench';
import type { Readings } from '../readings';

let kept: {
  readonly balance: Balance;
  readonly say: Readings;
  readonly envelope: LoadEnvelope | null;
  readonly answer: Verdict;
} | null = null;

/** The verdict of now; its parts are asked for one by one. */
export function answerOf(bench: Bench, say: Readings): Verdict {
  const balance = bench.balance.get();
  const { envelope } = bench.rest.get();
  if (kept?.balance !== balance || kept.say !== say || kept.envelope !== envelope) {
    kept = { balance, say, envelope, answer: verdict(bench.document.current(), balance, say, envelope) };
  }
  return kept.answer;
}

/** "Knife edge: " while the aircraft is not held level, for then the verdict is of that attitude. */
export function held({ view }: Bench): string {
  const { attitude } = view.getState();
  return isLevel(attitude) ? '' : `${attitudeName(attitude)}: `;
}
