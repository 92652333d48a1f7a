import { type Fault, shortened, toldFault } from '../../reading/fault';
import { isMeasure, placeholdersIn } from '../fill';
import type { Lesson } from '../types';
import { BARE_MEASURE, bareWord, FILLERS, HIDDEN_DOER, MOST_WORDS, sentencesOf, wordsOf } from './reading';
import { EXPLAINED_SHORT, LONG_BUT_PLAIN, LONGEST_PLAIN, UNEXPLAINED } from './technicalWords';
import { type LessonText, textsOf } from './texts';

/** Slow reading aloud, words a minute (from memory: 150 is usual; figures take longer). */
const WORDS_A_MINUTE = 120;

/** Faults of the words: placeholders that nothing fills, and sentences that are hard to read. */
export function lintWords(lesson: Lesson): readonly Fault[] {
  const texts = textsOf(lesson);
  return [
    ...texts.flatMap((text) => [...placeholderFaults(lesson, text), ...readingFaults(lesson, text)]),
    ...lengthFaults(lesson, texts),
  ];
}

function placeholderFaults(lesson: Lesson, { at, text, may }: LessonText): readonly Fault[] {
  const inside = placeholdersIn(text);
  const allowed = may.map((name) => `{${name}}`).join(', ');
  const expected = `a measure such as {300 mm}${allowed === '' ? '' : `, or one of ${allowed}`}`;
  const wrong = inside.filter((each) => !isMeasure(each) && !may.includes(each));
  const loose = text.replace(/\{[^{}]*\}/g, '');
  const faults = wrong.map((each) => {
    const came = `{${shortened(each)}}`;
    return toldFault(lesson, at, `nothing fills ${came} here; expected ${expected}.`, expected, came);
  });
  if (/[{}]/.test(loose)) {
    const words = 'a brace stands alone; expected them in pairs, as in {answer}.';
    faults.push(toldFault(lesson, at, words, 'braces in pairs', 'one alone'));
  }
  const timesMoved = lesson.question.as === 'times' && at[0] !== 'check' && inside.includes('moved');
  if (timesMoved) {
    const words = 'the question asks how many times as much; expected {answer} and not {moved}.';
    faults.push(toldFault(lesson, at, words, '{answer}', '{moved}'));
  }
  const bare = BARE_MEASURE.exec(loose)?.[0];
  if (bare !== undefined) {
    const words = `“${bare}” would stay as it is for inches and ounces; expected it in braces, as in {300 mm}.`;
    faults.push(toldFault(lesson, at, words, 'measures in braces', bare));
  }
  return faults;
}

function readingFaults(lesson: Lesson, { at, text }: LessonText): readonly Fault[] {
  const tell = (words: string, expected: string, received: string) =>
    toldFault(lesson, at, words, expected, received);
  const plain = text.replace(/\{[^{}]*\}/g, 'FIGURE');
  const lower = ` ${plain.toLowerCase()} `;
  const faults: Fault[] = [];
  for (const sentence of sentencesOf(text)) {
    const { length } = wordsOf(sentence);
    if (length > MOST_WORDS) {
      const words = `a sentence has ${length} words; expected at most ${MOST_WORDS}: “${shortened(sentence)}”`;
      faults.push(tell(words, `at most ${MOST_WORDS} words`, `${length} words`));
    }
  }
  for (const word of new Set(
    wordsOf(plain)
      .flatMap((each) => each.split(/[-/]/))
      .map(bareWord),
  )) {
    if (/^\p{Lu}{2,}$/u.test(word) && word !== 'FIGURE' && !EXPLAINED_SHORT.has(word)) {
      faults.push(
        tell(`“${word}” is an abbreviation that nothing explains.`, 'words in full, CG and MAC apart', word),
      );
    } else if (word.length > LONGEST_PLAIN && !LONG_BUT_PLAIN.has(word.toLowerCase())) {
      const words = `“${shortened(word)}” is a long word; expected a plainer one.`;
      faults.push(tell(words, `words of at most ${LONGEST_PLAIN} letters`, word));
    }
  }
  for (const term of UNEXPLAINED) {
    if (new RegExp(`\\b${term}\\b`, 'i').test(plain)) {
      faults.push(tell(`“${term}” is a word that nothing explains.`, 'plain or explained words', term));
    }
  }
  for (const filler of FILLERS) {
    if (new RegExp(`\\b${filler}\\b`).test(lower)) {
      faults.push(tell(`“${filler}” says nothing; leave it out.`, 'no filler', filler));
    }
  }
  const hidden = HIDDEN_DOER.exec(plain)?.[0];
  if (hidden !== undefined) {
    faults.push(tell(`“${hidden}” hides who does it; say what to do.`, 'who does it', hidden));
  }
  if (!/[.?!:]["”)]?$/.test(text.trim()) && at[0] !== 'title') {
    faults.push(tell('expected a full stop, a question mark or a colon at its end.', 'an end', 'none'));
  }
  return faults;
}

function lengthFaults(lesson: Lesson, texts: readonly LessonText[]): readonly Fault[] {
  const count = texts.reduce(
    (sum, { text }) => sum + wordsOf(text.replace(/\{[^{}]*\}/g, 'FIGURE')).length,
    0,
  );
  const minutes = count / WORDS_A_MINUTE;
  if (minutes <= lesson.minutes) return [];
  const words = `there are ${count} words to read, which takes ${minutes.toFixed(1)} minutes; expected at most ${lesson.minutes}.`;
  return [toldFault(lesson, ['minutes'], words, `at most ${lesson.minutes} minutes`, `${count} words`)];
}
