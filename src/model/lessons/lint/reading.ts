/** The most words of a sentence. Plain-language guides ask for 15 to 20 on average (from memory); here no sentence has more. */
export const MOST_WORDS = 20;

/** The sentences of a text, placeholders as one word each. */
export const sentencesOf = (text: string): readonly string[] =>
  text
    .replace(/\{[^{}]*\}/g, 'FIGURE')
    .split(/(?<=[.!?]["”)]?)\s+(?=["“]?[A-Z0-9±])/)
    .map((sentence) => sentence.trim())
    .filter((sentence) => sentence !== '');

/** The words of a sentence; a figure is a word, a dash or an arrow is none. */
export const wordsOf = (sentence: string): readonly string[] =>
  sentence.split(/[\s—–]+/).filter((word) => /[\p{L}\p{N}]/u.test(word));

/** A word without what stands around it: quotes, commas, a genitive. */
export const bareWord = (word: string): string =>
  word.replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu, '').replace(/[’']s$/u, '');

/** Words that say nothing, and long ways round a short word. */
export const FILLERS: readonly string[] = [
  'actually',
  'as you can see',
  'at this point in time',
  'basically',
  'due to the fact',
  'essentially',
  'in order to',
  'it is important to',
  'it should be noted',
  'kind of',
  'obviously',
  'of course',
  'please note',
  'really',
  'simply',
  'sort of',
  'utilise',
  'utilize',
  'very',
];

/** A figure with a unit that stands outside braces: nobody would turn it into inches and ounces. */
export const BARE_MEASURE = /(?<![\p{L}\d])[\d.,]*\d\s?(?:mm|cm|m|g|kg|ml|l|in|oz|lb)(?![\p{L}\d²³·])/u;

/** A sentence in the passive that hides who does it: "is to be moved", "should be placed". */
export const HIDDEN_DOER = /\b(?:is|are|must|should|has|have) (?:to )?be (?:\w+ly )?\w+(?:ed|en|ut|ld)\b/i;
