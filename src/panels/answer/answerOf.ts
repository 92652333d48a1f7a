import { attitudeName, isLevel } from '../../model/loads/attitude';
import { type Verdict, verdict } from '../../model/words/verdict';
import type { Bench } from '../../store/bench';
import type { Readings } from '../readings';

let kept: { readonly causes: readonly unknown[]; readonly answer: Verdict } | null = null;

/** The answer of now; its parts are asked for one by one. */
export function answerOf(bench: Bench, say: Readings): Verdict {
  const judgement = bench.verdict.judgement();
  const { advice } = bench.verdict.get();
  const checking = bench.verdict.checking();
  const causes = [judgement, advice, say, checking];
  if (!kept?.causes.every((cause, index) => cause === causes[index])) {
    const mass = { massG: bench.balance.get().massG, plusMinusG: bench.verdict.massPlusMinusG() };
    const answer = verdict(bench.document.current(), judgement, say, { advice, mass, checking });
    kept = { causes, answer };
  }
  return kept.answer;
}

/** "Knife edge: " while the aircraft is not held level, for then the verdict is of that attitude. */
export function held({ view }: Bench): string {
  const { attitude } = view.getState();
  return isLevel(attitude) ? '' : `${attitudeName(attitude)}: `;
}
