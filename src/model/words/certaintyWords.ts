import { BARE_AIRFRAME_ID } from '../airframe/bareAirframe';
import type { Certainty, Improvement } from '../balance/certainty';
import { shownText } from '../document/names';

/** Figures as the person reads them; `fine` keeps one decimal more. */
export interface SayFine {
  lengthFine(mm: number): string;
  mass(g: number): string;
}

/** "97 % sure that the whole burn is in the band." */
export function sureWords(probability: number, burns: boolean): string {
  const what = burns ? 'the whole burn is' : 'the CG is';
  if (probability >= 0.995) return `More than 99 % sure that ${what} in the band.`;
  if (probability < 0.005) return `Less than 1 % sure that ${what} in the band.`;
  return `${Math.round(probability * 100)} % sure that ${what} in the band.`;
}

/** A tenth of the variance is worth somebody's time. */
const WORTH_DOING = 0.1;

/** What to do next: "Weighing the wing to 1 g would help most." Empty when nothing stands out. */
export function adviceWords({ ranking }: Certainty, say: SayFine): string {
  const [best] = ranking;
  if (!best || best.share < WORTH_DOING) return '';
  return `${doing(best, say)} would help most.`;
}

function doing({ quantity, name, bodyId, plusMinus }: Improvement, say: SayFine): string {
  const what = bodyId === BARE_AIRFRAME_ID ? 'the bare airframe' : `“${shownText(name)}”`;
  if (quantity === 'density') return 'Weighing a known volume of the fuel';
  if (quantity === 'limits') return 'Finding the neutral point in careful flights';
  if (quantity === 'mass')
    return plusMinus > 1 ? `Weighing ${what} to ${say.mass(1)}` : `Weighing ${what} on finer scales`;
  return plusMinus > 1
    ? `Finding the CG of ${what} to ${say.lengthFine(1)}`
    : `Finding the CG of ${what} more closely`;
}
