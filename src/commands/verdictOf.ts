import { advise } from '../model/advice/advise';
import { type Balance, LEVEL } from '../model/balance/balance';
import { cgErrorOf, LINE_95 } from '../model/balance/certainty';
import type { Aircraft, ReferencePoint } from '../model/document/types';
import type { UnitSystem } from '../model/units';
import { type Verdict, verdict } from '../model/words/verdict';
import { sayIn } from './say';

/** The whole answer for an aircraft held level: judged in every load state, its fit too, with what would mend it. */
export function verdictOf(
  aircraft: Aircraft,
  balance: Balance,
  system: UnitSystem,
  from: ReferencePoint | null,
): Verdict {
  const say = sayIn(system, from);
  const advice = advise(aircraft, { down: LEVEL, estimate: balance.estimate }, say);
  const error = cgErrorOf(aircraft, balance);
  const mass = { massG: balance.massG, plusMinusG: error && LINE_95 * error.massSigmaG };
  return verdict(aircraft, advice.before, say, { advice, mass });
}
