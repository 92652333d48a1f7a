import type { Aircraft } from '../model/document/types';

export const DATUM = 'Datum';

/** "Datum: tip of the nose". */
export const datumName = ({ datum }: Aircraft): string => (datum ? `${DATUM}: ${lower(datum)}` : DATUM);

const lower = (words: string) => words.charAt(0).toLowerCase() + words.slice(1);
