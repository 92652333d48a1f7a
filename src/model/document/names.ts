/**
 * The one home of what a name may hold and how a text that is not ours is shown. A control character can break a
 * line or clear a terminal; one that turns the reading direction can make "478 g" read "g 874".
 */

/** The most characters of a name; nobody's card or table has room for more. */
export const LONGEST_NAME = 200;

/** What a name may be, for a sentence that refuses another. */
export const NAME_WANTED = `a name of 1 to ${LONGEST_NAME} characters that can be seen, on one line`;

/**
 * Control characters, halves of a character, line and paragraph separators, byte order marks, and the marks that
 * embed, override or isolate a reading direction (Unicode Standard Annex 9, table 3 and "implicit marks").
 */
const UNSHOWABLE = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/u;
const UNSHOWABLE_ALL = new RegExp(UNSHOWABLE.source, 'gu');
/** A line break or tab stands in a note as it does in any text. */
const UNSHOWABLE_IN_NOTE = /[^\P{Cc}\t\n\r]|[\p{Cs}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/u;
const VISIBLE = /[\p{L}\p{N}\p{P}\p{S}]/u;
/** Letters that are written from right to left: Hebrew to Arabic Extended, and the forms and planes that follow them. */
const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/** Whether a text can be a name: something to be seen, on one line, that leaves the text around it alone. */
export const isName = (text: string): boolean =>
  text.length <= LONGEST_NAME && VISIBLE.test(text) && !UNSHOWABLE.test(text);

/** Whether a text can be a note: as a name, but empty, long or of several lines if it likes. */
export const isNote = (text: string): boolean => !UNSHOWABLE_IN_NOTE.test(text);

/**
 * A text as it can be shown among others: what cannot be seen, or would turn its neighbours round, stands as its code
 * ("\u202e"), and what is read from right to left is closed off (first strong isolate, U+2068, to pop, U+2069).
 */
export function shownText(text: string): string {
  const seen = text.replace(UNSHOWABLE_ALL, escaped);
  return RIGHT_TO_LEFT.test(seen) ? `\u2068${seen}\u2069` : seen;
}

const escaped = (character: string) => `\\u${(character.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`;
