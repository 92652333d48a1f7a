import type { Aircraft } from '../model/document/types';

export const DATUM = 'Datum';

/** "Datum: tip of the nose". */
export const datumName = ({ datum }: Aircraft): string => (datum ? `${DATUM}: ${lower(datum)}` : DATUM);

/** What stations are counted from, as it stands in a sentence: "the datum", "the wing root leading edge". */
export function pointWords({ referencePoints }: Aircraft, fromId: string | null): string {
  const point = referencePoints.find(({ id }) => id === fromId);
  return point ? `“${point.name}”` : 'the datum';
}

const lower = (words: string) => words.charAt(0).toLowerCase() + words.slice(1);
