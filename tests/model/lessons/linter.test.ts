import { describe, expect, test } from 'vitest';
import { lintLesson, lintLessons } from '../../../src/model/lessons/lint/lintLesson';
import { parseLesson, readLesson } from '../../../src/model/lessons/readLesson';
import type { Json } from './breaks';
import { lessonJson, lessonNames, lessonText, soundLesson } from './lessonFiles';
import { unread } from './unreadLessons';
import { unsound } from './unsoundLessons';

/** What the linter says of a lesson after it was broken; a fault of the reader counts as well. */
function saidOf(name: string, breakIt: (json: Json) => void): readonly string[] {
  const json = lessonJson(name);
  breakIt(json);
  const read = readLesson(json);
  return (read.ok ? lintLesson(read.lesson) : read.faults).map(({ sentence }) => sentence);
}

test('the lessons that come with the bench are sound, also side by side', () => {
  expect(lessonNames.length).toBe(9);
  const linted = lintLessons(lessonNames.map((name) => ({ name, text: lessonText(name) })));
  for (const { faults } of linted) expect(faults).toEqual([]);
  for (const { name, lesson } of linted) expect(lesson?.id).toBe(name);
});

describe.each([...unread, ...unsound])('%s', (_, file, breakIt, sentence) => {
  const said = saidOf(file, breakIt);
  test('is told, with where, what was expected and what came', () => {
    expect(
      said.some((each) => sentence.test(each)),
      said.join('\n'),
    ).toBe(true);
  });
});

test('each fault has a sentence of its own kind', () => {
  const kinds = [...unread, ...unsound].map(([, , , sentence]) => String(sentence));
  expect(kinds.length).toBeGreaterThanOrEqual(75);
  // The text of 600 characters may be too short or too long, and two masses cannot be found.
  expect(kinds.length - new Set(kinds).size).toBeLessThanOrEqual(2);
});

test('two lessons with one id', () => {
  const text = lessonText('see-saw');
  const [first, second] = lintLessons([
    { name: 'a.json', text },
    { name: 'b.json', text },
  ]);
  expect(first?.faults).toEqual([]);
  expect(second?.faults.map(({ sentence }) => sentence)).toEqual([
    'id: expected an id of its own: a.json has it, got "see-saw".',
  ]);
});

test('text that is no JSON is told with its line and column', () => {
  const read = parseLesson(lessonText('see-saw').replace('"title":', '"title"'));
  expect(read.ok).toBe(false);
  if (!read.ok)
    expect(read.faults[0]?.sentence).toMatch(/^This is not JSON: at line 5, column \d+, expected/);
});

test('a lesson that begins elsewhere, and asks from a reference point, is sound', () => {
  const json = lessonJson('see-saw');
  json.begin = [{ do: 'place', itemId: 'servos', stationMm: 430 }];
  json.aircraft.referencePoints.push({ id: 'former', name: 'Former', positionMm: [200, 0, 0] });
  json.question.from = 'former';
  expect(lintLesson(soundLesson(json))).toEqual([]);
});

test('a file of an older aircraft is brought up to date as any aircraft is', () => {
  const json = lessonJson('see-saw');
  json.aircraft.version = 1;
  const read = readLesson(json);
  expect(read.ok || read.faults.map(({ sentence }) => sentence)).toBe(true);
});
