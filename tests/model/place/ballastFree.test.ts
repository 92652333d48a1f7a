import { describe, expect, test } from 'vitest';
import { LEVEL } from '../../../src/model/balance/balance';
import { removeItem } from '../../../src/model/document/edit';
import type { Aircraft } from '../../../src/model/document/types';
import { fitRefusals } from '../../../src/model/fit/wholeFit';
import { applyArrangement } from '../../../src/model/place/applyArrangement';
import { searchPlaces } from '../../../src/model/place/searchPlaces';
import { now, solve } from '../../engine/place/solver';
import { redshank } from './bench';

const zone = (stationMm: number, lengthMm: number) => ({
  ...{ id: 'hot', name: 'Hot pipe', positionMm: [stationMm, 0, 0] as const },
  ...{ lengthMm, widthMm: 200, heightMm: 200 },
});

/** Tail-heavy, and nothing but ballast may mend it. */
const tailHeavy = (free: Aircraft['ballastFree']): Aircraft => {
  const aircraft = redshank(590);
  const parts = aircraft.parts.map((part) => ({ ...part, locked: true }));
  return { ...aircraft, parts, lateralToleranceMm: 0, ...(free ? { ballastFree: free } : {}) };
};

function search(aircraft: Aircraft, emptied: Aircraft['parts'] = []) {
  const empty = emptied.reduce((left, { id }) => removeItem(left, id), aircraft);
  const outcome = searchPlaces(
    { variants: [{ name: '', aircraft: empty }], settings: { down: LEVEL, emptied }, probability: null },
    { solve, now, timeMs: 5000 },
  );
  if ('fault' in outcome) throw new Error(outcome.fault);
  return outcome;
}

describe('ballast where it may be', () => {
  test('goes to the nose where nothing is kept free', () => {
    const { answer, notes } = search(tailHeavy(undefined));
    expect(answer.best?.ballast.map(({ spotId }) => spotId)).toEqual(['nose']);
    expect(notes).toEqual([]);
  });

  test('a zone over the spot leaves none, and says so', () => {
    const { answer, notes } = search(tailHeavy([zone(20, 100)]));
    expect(answer.best).toBeNull();
    expect(answer.boundG).toBe(Number.POSITIVE_INFINITY);
    expect(notes).toEqual(['No ballast at Nose: it lies in Hot pipe, where none may be.']);
  });

  test('a zone beside the spot leaves what does not reach it, and the fit says nothing of that', () => {
    const aircraft = tailHeavy([zone(20 + 15 + 50, 100)]);
    const { answer, problem } = search(aircraft);
    expect(answer.best?.ballastG).toBeGreaterThan(0);
    expect(fitRefusals(aircraft, applyArrangement(aircraft, problem, answer.best!))).toEqual([]);
  });

  test('ballast that stood in the zone does not go back there', () => {
    const aircraft = tailHeavy([zone(20, 100)]);
    const part = aircraft.parts[0]!;
    const lead = {
      ...part,
      ...{ id: 'lead', name: 'Lead', role: 'ballast' as const, massG: 300, locked: false },
      ...{
        positionMm: [20, 0, 0] as const,
        shape: { kind: 'box' as const, lengthMm: 30, widthMm: 30, heightMm: 30 },
      },
    };
    const { answer } = search({ ...aircraft, parts: [...aircraft.parts, lead] }, [lead]);
    expect(answer.best).toBeNull();
  });
});
