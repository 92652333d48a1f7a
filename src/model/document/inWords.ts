import type { Aircraft } from './types';

/** A name or a sentence as it stands amid another: its capital small, unless it begins an abbreviation ("CG mark", "T-tail"). */
export const midSentence = (words: string): string =>
  /^(\p{Lu}\p{Ll}|A )/u.test(words) ? words.charAt(0).toLowerCase() + words.slice(1) : words;

/** "a", "a and b", "a, b and c". */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join() : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** What the tanks are said to hold. */
export const liquidWord = ({ fuel }: Pick<Aircraft, 'fuel'>): 'water' | 'fuel' =>
  fuel?.use === 'dump' ? 'water' : 'fuel';
