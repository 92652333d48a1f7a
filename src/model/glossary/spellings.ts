import { type GlossaryWord, glossary, type WordId } from './glossary';

/** A word's name last, so that it wins over what is merely explained with another. */
function spellingsOf({ word, also, parts = [] }: GlossaryWord): readonly string[] {
  return [...parts, ...also, word];
}

/** Each way in which a word of the glossary is written, in small letters, and which word it is. */
const words: ReadonlyMap<string, WordId> = new Map(
  glossary.flatMap((entry) =>
    spellingsOf(entry).map((spelling): [string, WordId] => [spelling.toLowerCase(), entry.id]),
  ),
);

/** All of them as they are written. */
export const spellings: readonly string[] = glossary.flatMap(spellingsOf);

/** Whether the glossary explains a word, however its letters are set. */
export const isExplained = (spelling: string): boolean => words.has(spelling.toLowerCase());

/** A stretch of a text, and the word of the glossary that it is; null where it is none. */
export interface Stretch {
  readonly text: string;
  readonly word: WordId | null;
}

/** A text cut at the words of the glossary among `ids`; each counts once, where it first stands. */
export function stretchesOf(text: string, ids: ReadonlySet<WordId>): readonly Stretch[] {
  const sought = [...words].filter(([, id]) => ids.has(id)).map(([spelling]) => spelling);
  // The longer first, so that "neutral point" is not cut by a shorter word inside it.
  const either = sought
    .sort((a, b) => b.length - a.length)
    .map((spelling) => spelling.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&'))
    .join('|');
  if (either === '') return [{ text, word: null }];
  const found: Stretch[] = [];
  const seen = new Set<WordId>();
  let from = 0;
  for (const match of text.matchAll(
    new RegExp(`(?<![\\p{L}\\p{N}-])(?:${either})(?![\\p{L}\\p{N}-])`, 'giu'),
  )) {
    const word = words.get(match[0].toLowerCase());
    if (word === undefined || seen.has(word)) continue;
    seen.add(word);
    if (match.index > from) found.push({ text: text.slice(from, match.index), word: null });
    found.push({ text: match[0], word });
    from = match.index + match[0].length;
  }
  if (from < text.length) found.push({ text: text.slice(from), word: null });
  return found;
}
