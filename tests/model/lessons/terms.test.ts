import { describe, expect, test } from 'vitest';
import { isExplained, stretchesOf } from '../../../src/model/glossary/spellings';
import { termsIn } from '../../../src/model/lessons/lessonTerms';
import { lintWords } from '../../../src/model/lessons/lint/lintWords';
import { textsOf } from '../../../src/model/lessons/lint/texts';
import { lessonJson, lessonNamed, lessonNames, soundLesson } from './lessonFiles';

const wordsIn = (text: string) =>
  termsIn(text).flatMap(({ text: spelt, word }) => (word ? [`${spelt}: ${word}`] : []));

describe('words of the glossary in a sentence', () => {
  const cases: readonly [string, readonly string[]][] = [
    ['The CG goes aft, and the CG stays there.', ['CG: cg']],
    ['The header tank feeds the engine.', ['header tank: header-tank']],
    ['Neutral point and margin (MAC).', ['Neutral point: neutral-point', 'margin: margin', 'MAC: mac']],
    ['Stay clear of the aft limit.', ['aft limit: band']],
    ['It is nose-heavy, not heavy.', ['nose-heavy: tail-heavy']],
    ['Burn half of it. The full tank is dry.', []],
    ['An armful at the stations.', []],
    ['', []],
  ];
  test.each(cases)('%s', (text, words) => {
    expect(wordsIn(text)).toEqual(words);
    expect(
      termsIn(text)
        .map((each) => each.text)
        .join(''),
    ).toBe(text);
  });

  test('none among no words', () =>
    expect(stretchesOf('The CG.', new Set())).toEqual([{ text: 'The CG.', word: null }]));
});

test('no sentence of the lessons loses a letter by it, and each lesson has a word to ask for', () => {
  for (const name of lessonNames) {
    const texts = textsOf(lessonNamed(name)).map(({ text }) => text);
    for (const text of texts)
      expect(
        termsIn(text)
          .map((each) => each.text)
          .join(''),
      ).toBe(text);
    expect(texts.some((text) => wordsIn(text).length > 0)).toBe(true);
  }
});

test('what the glossary explains an instructor may say, and nothing else of the trade', () => {
  const said = (closing: string) =>
    lintWords(soundLesson({ ...lessonJson('see-saw'), closing })).map(({ sentence }) => sentence);
  expect(isExplained('Decalage')).toBe(true);
  expect(said('Mind the decalage and the LEMAC.')).toEqual([]);
  expect(isExplained('phugoid')).toBe(false);
  expect(said('Mind the phugoid.').join()).toContain('nothing explains');
});
