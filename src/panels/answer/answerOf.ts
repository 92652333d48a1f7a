import { lastPerObject } from '../../engine/memory/memory';
import { attitudeName, isLevel } from '../../model/loads/attitude';
import { type Verdict, verdict } from '../../model/words/verdict';
import type { Bench } from '../../store/bench';
import type { Readings } from '../readings';

/** The answer of now; its parts are asked for one by one. */
export function answerOf(bench: Bench, say: Readings): Verdict {
  const { verdict: store } = bench;
  return lastAnswer(bench, say, store.judgement(), store.get().advice, store.checking());
}

type FromStore<K extends keyof Bench['verdict']> = Bench['verdict'][K] extends () => infer T ? T : never;

const lastAnswer = lastPerObject(
  (
    bench: Bench,
    say: Readings,
    judgement: FromStore<'judgement'>,
    advice: FromStore<'get'>['advice'],
    checking: FromStore<'checking'>,
  ): Verdict => {
    const mass = { massG: bench.balance.get().massG, plusMinusG: bench.verdict.massPlusMinusG() };
    return verdict(bench.document.current(), judgement, say, { advice, mass, checking });
  },
);

/** "Knife edge: " while the aircraft is not held level, for then the verdict is of that attitude. */
export function held({ view }: Bench): string {
  const { attitude } = view.getState();
  return isLevel(attitude) ? '' : `${attitudeName(attitude)}: `;
}
