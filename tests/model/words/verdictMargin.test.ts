import { expect, test } from 'vitest';
import { balanceAt, LEVEL, type Loading } from '../../../src/model/balance/balance';
import type { Aircraft } from '../../../src/model/document/types';
import { changeStability, type StabilityEstimate } from '../../../src/model/stability/stability';
import { verdict } from '../../../src/model/words/verdict';
import { aircraftOf, boxPart } from '../aircraft';

const say = {
  length: (mm: number) => `${Math.round(mm)} mm`,
  station: (mm: number) => `${Math.round(mm)} mm`,
  mass: (g: number) => `${Math.round(g)} g`,
};

/** All the mass at station 530. */
const aircraft: Aircraft = aircraftOf([], [boxPart('pack', 1000, [530, 0, 0])]);
const banded = (forwardMm: number, aftMm: number): Aircraft => ({
  ...aircraft,
  targetBand: { by: 'station', forwardMm, aftMm },
});

/** MAC from 500 to 700 with the neutral point where a test wants it. */
const at = (neutralPointMm: number): StabilityEstimate => ({
  neutralPointMm,
  macMm: 200,
  lemacMm: 500,
  macButtlineMm: 300,
  pctMac: (neutralPointMm - 500) / 2,
  clAlphaPerRad: 5,
  fuselageShiftMm: 0,
  refinedBy: 0.05,
  unknowns: 200,
  converged: true,
  detail: 'fine',
  textbookMm: null,
  textbookDiffers: false,
  strips: [],
  neutralPointSigmaMm: 4,
  doubts: [],
  notes: [],
});
const said = (subject: Aircraft, loading: Partial<Loading>) =>
  verdict(subject, balanceAt(subject, { fuelFraction: 1, down: LEVEL, ...loading }), say);

test('the static margin is said as an estimate: (550 − 530)/200 is 10 % MAC', () => {
  const { tone, detail } = said(banded(520, 540), { estimate: at(550) });
  expect(tone).toBe('good');
  expect(detail).toContain('Estimated static margin 10 % MAC.');
});

test('an estimate that is out of date is left out', () => {
  const known = { estimate: at(533), estimateFresh: false };
  expect(said(banded(520, 540), known)).toEqual(said(banded(520, 540), {}));
  const wanted = changeStability(aircraft, { marginRange: { minPct: 5, maxPct: 15 } });
  expect(said(wanted, known).tone).toBe('unknown');
});

test('a stated band that reaches behind the neutral point is not to be trusted', () => {
  const { tone, detail } = said(banded(520, 562), { estimate: at(550) });
  expect(tone).toBe('caution');
  expect(detail).toContain(
    'The aft limit is 12 mm behind the estimated neutral point: do not trust this band.',
  );
});

test('no advice is given to move a CG into such a band', () => {
  const { tone, detail } = said(banded(540, 562), { estimate: at(550) });
  expect(tone).toBe('bad');
  expect(detail).toMatch(/do not trust this band/);
  expect(detail).not.toMatch(/would just do|No single move/);
});

test('a CG behind the neutral point is bad, in the band or not: (530 − 520)/200 is 5 % MAC', () => {
  const { tone, detail } = said(banded(510, 540), { estimate: at(520) });
  expect(tone).toBe('bad');
  expect(detail).toContain('The CG is 5 % MAC behind the estimated neutral point.');
});

test('a band from the margin is called an estimate', () => {
  const wanted = changeStability(aircraft, { marginRange: { minPct: 5, maxPct: 15 } });
  expect(said(wanted, { estimate: at(550) })).toMatchObject({
    tone: 'good',
    headline: 'In the estimated band.',
  });
  // The band runs from 600 − 30 to 600 − 10, so the CG lies 40 mm ahead of it.
  expect(said(wanted, { estimate: at(600) }).headline).toBe('Nose-heavy by 40 mm of the estimated band.');
});
