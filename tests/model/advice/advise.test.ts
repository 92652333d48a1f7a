import { describe, expect, test } from 'vitest';
import { advise } from '../../../src/model/advice/advise';
import type { Spoken } from '../../../src/model/advice/figures';
import { applyRemedy, type Remedy } from '../../../src/model/advice/remedy';
import { LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft } from '../../../src/model/document/types';
import { newProblems, wholeFit } from '../../../src/model/fit/wholeFit';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import { compareSeverity, type Judgement } from '../../../src/model/judgement/types';
import { followWords } from './followWords';
import { type Case, HULL, randomCase } from './randomAircraft';

const METRIC: Spoken = { units: 'metric', fromMm: 0 };
const INCHES: Spoken = { units: 'inch-ounce', fromMm: 37.3 };

/** CG over all parts and the hull by moments alone, in every combination of at most one two-way switch that flies. */
function cgsByHand({ parts, switches = [] }: Aircraft): readonly (readonly [x: number, y: number])[] {
  const [drop] = switches;
  const flying = drop?.positions.filter(({ onStand }) => !onStand) ?? [{ without: [] }];
  return flying.map(({ without = [] }) => {
    const aboard = parts.filter(({ id }) => !without.includes(id));
    const hullG = HULL.mass.by === 'weighed' ? HULL.mass.massG : 0;
    const massG = aboard.reduce((sum, part) => sum + part.massG, hullG);
    // The hull is its own mirror image about station 450.
    const moment = (axis: 0 | 1) =>
      aboard.reduce((sum, part) => sum + part.massG * part.positionMm[axis], axis === 0 ? hullG * 450 : 0);
    return [moment(0) / massG, moment(1) / massG];
  });
}

const ALONG = /tail-heavy|nose-heavy|margin|behind-neutral/;
const findingsAlong = ({ findings }: Judgement) =>
  findings.filter(({ kind }) => ALONG.test(kind) && kind !== 'band-behind-neutral-point');

/** That a remedy, done from its words alone, does what it says and harms nothing. */
function expectFollowable({ aircraft, estimate }: Case, remedy: Remedy, before: Judgement, spoken: Spoken) {
  const given = { down: LEVEL, estimate };
  const followed = followWords(aircraft, remedy, spoken.fromMm);
  const after = judgeFully(followed, given);
  expect(newProblems(wholeFit(aircraft), wholeFit(followed)), remedy.words).toEqual([]);
  expect(compareSeverity(after.severity, before.severity), remedy.words).toBeGreaterThanOrEqual(0);
  // It claims exactly what comes of it, and by the button the same.
  for (const judged of [after, judgeFully(applyRemedy(aircraft, remedy), given)]) {
    expect(judged.severity).toBe(remedy.result.severity);
    expect(judged.findings.map(({ kind }) => kind)).toEqual(remedy.result.findings.map(({ kind }) => kind));
  }
  return after;
}

const SEEDS = Array.from({ length: 120 }, (_, k) => k + 1);

describe.each([
  ['metric', METRIC],
  ['inches', INCHES],
] as const)('remedies of aircraft made by chance, spoken in %s', (_, spoken) => {
  const cases = SEEDS.map((seed) => {
    const one = randomCase(seed * (spoken === METRIC ? 1 : 7919));
    return { seed, ...one, ...advise(one.aircraft, { down: LEVEL, estimate: one.estimate }, spoken) };
  });

  test('followed from the printed figures, each does what it claims and harms nothing', () => {
    const kinds = new Map<string, number>();
    for (const one of cases) {
      if (!one.remedy) continue;
      kinds.set(one.remedy.kind, (kinds.get(one.remedy.kind) ?? 0) + 1);
      expectFollowable(one, one.remedy, one.before, spoken);
    }
    // Enough of each to have seen something.
    for (const kind of ['reduce-ballast', 'move', 'move-pair', 'add-ballast', 'clear']) {
      expect(kinds.get(kind) ?? 0, kind).toBeGreaterThan(0);
    }
  });

  test('one for the CG brings it into the band by moments worked out by hand', () => {
    for (const { aircraft, remedy, about, before, seed } of cases) {
      if (!remedy || about === 'fit' || !before.band) continue;
      const cgs = cgsByHand(followWords(aircraft, remedy, spoken.fromMm));
      for (const [x, y] of cgs) {
        if (about === 'across') {
          expect(Math.abs(y), `seed ${seed}`).toBeLessThanOrEqual(aircraft.lateralToleranceMm + 1e-6);
        } else {
          expect(x, `seed ${seed}: ${remedy.words}`).toBeGreaterThanOrEqual(before.band.forwardMm - 1e-6);
          expect(x, `seed ${seed}: ${remedy.words}`).toBeLessThanOrEqual(before.band.aftMm + 1e-6);
        }
      }
      if (about === 'along')
        expect(findingsAlong(remedy.result).filter(({ severity }) => severity !== 'caution')).toEqual([]);
    }
  });

  test('nothing is to be done by 0, and nothing is spoken of a sound aircraft', () => {
    for (const { remedy, before, about } of cases) {
      expect(remedy?.words ?? '').not.toMatch(/\s0(\.0+)?[\s\u202f](mm|in|g|oz)/);
      if (before.severity === 'good') expect([remedy, about]).toEqual([null, null]);
    }
  });
});

/** Every whole-millimetre move of every unlocked part in the hull, without any reasoning about what helps. */
function moveOfOneByForce({ aircraft, estimate }: Case): string | null {
  const before = judgeFully(aircraft, { down: LEVEL, estimate });
  for (const part of aircraft.parts.filter(({ locked, massG }) => !locked && massG > 0)) {
    for (let byMm = -900; byMm <= 900; byMm += 1) {
      const [x, y, z] = part.positionMm;
      if (byMm === 0 || x + byMm < 0 || x + byMm > 900) continue;
      const moved: Aircraft = {
        ...aircraft,
        parts: aircraft.parts.map((one) => (one === part ? { ...one, positionMm: [x + byMm, y, z] } : one)),
      };
      const inBand = cgsByHand(moved).every(
        ([cg]) => cg >= before.band!.forwardMm && cg <= before.band!.aftMm,
      );
      if (!inBand || newProblems(wholeFit(aircraft), wholeFit(moved)).length > 0) continue;
      const after = judgeFully(moved, { down: LEVEL, estimate });
      if (findingsAlong(after).length === 0) return `${part.name} by ${byMm}`;
    }
  }
  return null;
}

test('that no move of one part will do is said only where trying them all finds none', () => {
  let said = 0;
  for (let seed = 1; seed <= 400 && said < 3; seed += 1) {
    const one = randomCase(seed);
    const { noMoveOfOne } = advise(one.aircraft, { down: LEVEL, estimate: one.estimate }, METRIC);
    if (!noMoveOfOne) continue;
    said += 1;
    expect(moveOfOneByForce(one), `seed ${seed}`).toBeNull();
  }
  expect(said).toBe(3);
});
