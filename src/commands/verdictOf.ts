import { advise } from '../model/advice/advise';
import type { Balance } from '../model/balance/balance';
import { cgErrorOf, LINE_95 } from '../model/balance/certainty';
import type { Aircraft } from '../model/document/types';
import { downOf } from '../model/loads/attitude';
import { type Verdict, verdict } from '../model/words/verdict';
import { sayIn } from './say';
import type { TableOptions } from './tableOptions';

/** The whole answer for an aircraft as it is held: judged in every load state, its fit too, with what would mend it. */
export function verdictOf(
  aircraft: Aircraft,
  balance: Balance,
  { attitude, system, from, estimating = 'done' }: Omit<TableOptions, 'fuelFraction'>,
): Verdict {
  const say = sayIn(system, from);
  const advice = advise(aircraft, { down: downOf(attitude), estimate: balance.estimate, estimating }, say);
  const error = cgErrorOf(aircraft, balance);
  const mass = { massG: balance.massG, plusMinusG: error && LINE_95 * error.massSigmaG };
  return verdict(aircraft, advice.before, say, { advice, mass });
}
