import { describe, expect, test } from 'vitest';
import { lintLessons } from '../../../src/model/lessons/lint/lintLesson';
import { readLesson } from '../../../src/model/lessons/readLesson';
import { textOf } from '../../../src/model/reading/fileText';
import { UNCHECKED } from '../../../src/model/reading/read';
import { chanceOf } from '../../fuzz/chance';
import { mutant } from '../../fuzz/mutants';
import { seed } from '../../seed';
import { lessonNames, lessonText } from './lessonFiles';

/** A sentence that says where and what: it ends as one, and holds nothing that only a program reads. */
function isSentence(sentence: string): boolean {
  return /[.?”"]$/.test(sentence) && !/\[object|undefined is|NaN\b/.test(sentence) && sentence.length > 10;
}

describe('spoilt lessons', () => {
  // A few hundred of the several thousand that were gone through by hand.
  const FILES = 240;
  const dice = chanceOf(seed);
  const sources = lessonNames.filter((name) => name !== 'neutral-point').map(lessonText);

  test('never throw, and always get a sentence or are sound', () => {
    let [refused, told, sound] = [0, 0, 0];
    for (let count = 0; count < FILES; count += 1) {
      const read = textOf(mutant(dice, sources));
      if (!read.ok) {
        expect(isSentence(read.fault.sentence), read.fault.sentence).toBe(true);
        refused += 1;
        continue;
      }
      const [linted] = lintLessons([{ name: 'spoilt.json', text: read.text }]);
      const { faults, lesson } = linted!;
      if (faults.length === 0) sound += 1;
      else if (lesson) told += 1;
      else refused += 1;
      for (const fault of faults) {
        expect(isSentence(fault.sentence), `${count}: ${fault.sentence}`).toBe(true);
        expect(fault.expected, fault.sentence).not.toBe(UNCHECKED);
      }
    }
    // All three ways are walked, or the spoiling spoils nothing or everything.
    for (const times of [refused, told, sound]) expect(times).toBeGreaterThan(3);
  });
});

test.each([null, undefined, 0, 'see-saw', [], {}, { format: 'counterpoise lesson' }, { format: {} }, [[]]])(
  '%j is no lesson, and is told so',
  (json) => {
    const read = readLesson(json);
    expect(read.ok).toBe(false);
    if (!read.ok) for (const { sentence } of read.faults) expect(isSentence(sentence), sentence).toBe(true);
  },
);
