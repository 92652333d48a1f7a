import { describe, expect, test } from 'vitest';
import { answerOf, lessonAnswer } from '../../../src/model/lessons/answer';
import { checkBench } from '../../../src/model/lessons/bench';
import {
  answerFillings,
  filled,
  lessonFillings,
  predictionFillings,
  readingFor,
} from '../../../src/model/lessons/fill';
import { cautions } from '../../../src/model/words/cautions';
import { lessonJson, lessonNamed, lessonNames } from './lessonFiles';

/**
 * Every sentence of the lessons as it is read, taken straight from the files. The linter has rules of its own; these are
 * written again, and stricter, so that neither hides a fault of the other.
 */
interface Sentence {
  readonly where: string;
  readonly text: string;
}

/** Texts of a file by where they stand; ids, words of the schema and the aircraft are none. */
function textsIn(value: unknown, where: string): readonly Sentence[] {
  if (Array.isArray(value)) return value.flatMap((each, index) => textsIn(each, `${where}[${index}]`));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => {
    if (key === 'aircraft' || key === 'goal' || key === 'quantity' || key === 'change') return [];
    const at = `${where}.${key}`;
    if (typeof each === 'string') return /[ .?]/.test(each) ? [{ where: at, text: each }] : [];
    return textsIn(each, at);
  });
}

/** Sentences with every placeholder filled as a person of metric units reads them. */
function sentencesOf(name: string): readonly Sentence[] {
  const lesson = lessonNamed(name);
  const reading = readingFor(lesson, 'metric');
  const { question, check } = lesson;
  const found = lessonAnswer(lesson)!;
  const checked = answerOf(checkBench(lesson), check.question)!;
  const ofCheck = answerFillings(check.question, checked, reading);
  const all = {
    ...lessonFillings(lesson, 'metric'),
    ...predictionFillings(question, question.axis.start, found, reading),
    item: '“Receiver”',
    away: '12 mm',
  };
  const { format: _, ...words } = lessonJson(name);
  return textsIn(words, name).flatMap(({ where, text }) => {
    const fillings = where.includes('.check.') ? { ...all, ...ofCheck } : all;
    return filled(text, fillings, reading)
      .split(/(?<=[.?!])\s+(?=\p{Lu}|±)/u)
      .map((sentence) => ({ where, text: sentence }));
  });
}

const all = lessonNames.flatMap(sentencesOf);

test('there is something to read', () => expect(all.length).toBeGreaterThan(250));

test('no sentence is longer than 20 words, and on average they are short', () => {
  const counts = all.map(({ where, text }) => ({ where, text, words: text.trim().split(/[ \n]+/).length }));
  expect(counts.filter(({ words }) => words > 20)).toEqual([]);
  const mean = counts.reduce((sum, { words }) => sum + words, 0) / counts.length;
  expect(mean).toBeLessThan(12);
});

test('every placeholder is filled, and no figure stands without its unit', () => {
  expect(all.filter(({ text }) => /[{}]|undefined|NaN|null|\[object/.test(text))).toEqual([]);
});

/**
 * The words of the trade that the lessons use; each is on the bench’s own list of explained words, or is told where it first
 * stands. Any other word of three syllables and more has to be an everyday one.
 */
const technical = new Set(
  'aircraft, balance, ballast, camera, inertia, moment, receiver, tailplane, margin, neutral, motor, engine, station, gyro'.split(
    ', ',
  ),
);
const everyday = new Set(
  `already, another, anybody, average, between, different, estimate, everybody, everything, forward, further, hardly, heavier,
   itself, lighter, minute, moving, nervous, nothing, numbers, ordinary, somebody, together, usually, whenever, direction,
   over, area, divided, sideways, into, enough, either, even, error, errors, every, quarter, only, other, aft, distance`
    .split(/,\s*/)
    .map((word) => word.trim()),
);

/** Groups of vowels, a silent e at the end apart: a rough count, on the long side. */
const syllables = (word: string) =>
  (
    word
      .toLowerCase()
      .replace(/(?:[^laeiouy]e|ed|es)$/, '')
      .match(/[aeiouy]+/g) ?? []
  ).length;

test('hard words are few, and each is of the trade or an everyday one', () => {
  const hard = new Map<string, string>();
  for (const { where, text } of all) {
    for (const word of text.toLowerCase().match(/\p{L}+/gu) ?? []) {
      if (syllables(word) > 3 && !technical.has(word) && !everyday.has(word)) hard.set(word, where);
    }
  }
  expect([...hard]).toEqual([]);
});

test('no abbreviation but CG and MAC, and MAC is told before it is used', () => {
  const short = all.flatMap(({ text }) => text.match(/\b\p{Lu}{2,}\b/gu) ?? []);
  expect([...new Set(short)].sort()).toEqual(['CG', 'MAC']);
  const first = all.find(({ text }) => text.includes('MAC'));
  expect(first?.text).toMatch(/mean wing chord \(MAC\)/);
});

test('no filler, no passive without a doer, no shouting', () => {
  const said =
    /\b(very|really|simply|basically|obviously|of course|please|just|actually|quite|note that|in order to)\b/i;
  expect(all.filter(({ text }) => said.test(text) && !/just when/.test(text))).toEqual([]);
  expect(all.filter(({ text }) => /\b(?:must|should|has to|have to|needs to) be \w+ed\b/.test(text))).toEqual(
    [],
  );
  expect(all.filter(({ text }) => text.includes('!'))).toEqual([]);
});

test('every text ends as a sentence does', () => {
  const ends = all.filter(({ where, text }) => !where.endsWith('.title') && !/[.?:]$/.test(text.trim()));
  expect(ends).toEqual([]);
});

test('nobody’s product, and birds for names', () => {
  const names = lessonNames.map((name) => lessonJson(name).aircraft.name as string);
  expect(new Set(names).size).toBe(lessonNames.length);
  for (const name of names) expect(name).toMatch(/^[A-Z][a-z]+$/);
});

describe('safety', () => {
  test.each(lessonNames)('%s says that figures are estimates, and who has the last word', (name) => {
    const said = lessonNamed(name).cautions;
    expect(said).toContain('estimates');
    expect(said).toContain('last-word');
    for (const id of said) expect(cautions.map((each) => each.id)).toContain(id);
  });

  test('what is estimated is called an estimate', () => {
    const texts = sentencesOf('neutral-point').map(({ text }) => text);
    expect(texts.filter((text) => /estimate/i.test(text)).length).toBeGreaterThan(0);
  });
});
