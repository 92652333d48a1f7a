import { describe, expect, test } from 'vitest';
import type { Certainty, Improvement } from '../../../src/model/balance/certainty';
import { adviceWords, sureWords } from '../../../src/model/words/certaintyWords';

const say = { lengthFine: (mm: number) => `${mm.toFixed(1)} mm`, mass: (g: number) => `${g} g` };

describe('how sure', () => {
  test.each([
    [1, true, 'More than 99 % sure that the whole burn is in the band.'],
    // Never 100 %.
    [0.995, true, 'More than 99 % sure that the whole burn is in the band.'],
    [0.994, true, '99 % sure that the whole burn is in the band.'],
    [0.414, false, '41 % sure that the CG is in the band.'],
    [0.005, false, '1 % sure that the CG is in the band.'],
    [0, false, 'Less than 1 % sure that the CG is in the band.'],
  ])('%d, burning: %s', (probability, burns, words) => {
    expect(sureWords(probability, burns)).toBe(words);
  });
});

describe('what would help most', () => {
  const best = (improvement: Partial<Improvement>) =>
    adviceWords(
      {
        ranking: [
          { share: 0.5, quantity: 'mass', name: 'Wing', bodyId: 'wing', plusMinus: 20, ...improvement },
        ],
      } as unknown as Certainty,
      say,
    );
  test.each([
    [{}, 'Weighing “Wing” to 1 g would help most.'],
    [{ plusMinus: 1 }, 'Weighing “Wing” on finer scales would help most.'],
    [{ bodyId: 'bare-airframe' }, 'Weighing the bare airframe to 1 g would help most.'],
    [{ quantity: 'station' }, 'Finding the CG of “Wing” to 1.0 mm would help most.'],
    [{ quantity: 'station', plusMinus: 1 }, 'Finding the CG of “Wing” more closely would help most.'],
    [{ quantity: 'density' }, 'Weighing a known volume of the fuel would help most.'],
    [{ quantity: 'limits' }, 'Finding the neutral point in careful flights would help most.'],
    // A tenth of it is worth somebody's time, less is not.
    [{ share: 0.1 }, 'Weighing “Wing” to 1 g would help most.'],
    [{ share: 0.09 }, ''],
  ] as [Partial<Improvement>, string][])('%o', (improvement, words) => {
    expect(best(improvement)).toBe(words);
  });

  test('nothing where nothing is doubtful', () => {
    expect(adviceWords({ ranking: [] } as unknown as Certainty, say)).toBe('');
  });
});
