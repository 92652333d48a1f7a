import { midSentence } from '../model/document/inWords';
import type { Aircraft } from '../model/document/types';

export const DATUM = 'Datum';

/** "Datum: tip of the nose". */
export const datumName = ({ datum }: Aircraft): string => (datum ? `${DATUM}: ${midSentence(datum)}` : DATUM);

/** Where stations are counted from, as it stands in a sentence: "the datum, tip of the nose", "wing root leading edge". */
export function fromWords({ datum, referencePoints }: Aircraft, fromId: string | null): string {
  const point = referencePoints.find(({ id }) => id === fromId);
  if (point) return `the ${midSentence(point.name)}`;
  return datum ? `the datum, ${midSentence(datum)}` : 'the datum';
}
