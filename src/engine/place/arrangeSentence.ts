import type { Arrangement } from './types';

/** Grams for a sentence: whole, or to a tenth where steps are finer. */
const gramsText = (grams: number): string => `${Math.round(grams * 10) / 10} g`;

/** What the sentence is about; the bound is infinite where it is proved that there is none, g. */
interface Told {
  readonly best: Arrangement | null;
  readonly boundG: number;
  readonly proved: boolean;
}

/** What was found and what is proved, in a sentence or two. */
export function arrangeSentence({ best, boundG, proved }: Told): string {
  if (boundG === Number.POSITIVE_INFINITY && !best) {
    return 'No arrangement of these parts, with any ballast at these spots, keeps every load state within its limits.';
  }
  if (!best) return 'No arrangement was found in the time given, and it is not proved that there is none.';
  if (best.ballastG === 0) return 'No ballast is needed.';
  if (proved) return `No arrangement does it with less than ${gramsText(best.ballastG)}.`;
  if (boundG <= 0)
    return `Found one with ${gramsText(best.ballastG)} of ballast; whether less would do is not proved.`;
  return `Found one with ${gramsText(best.ballastG)} of ballast; none does it with less than ${gramsText(boundG)}.`;
}
