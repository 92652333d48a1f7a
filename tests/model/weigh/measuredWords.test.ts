import { expect, test } from 'vitest';
import type { Difference, Reconciled } from '../../../src/engine/weigh/reconcile';
import type { UnaccountedFor } from '../../../src/engine/weigh/unaccountedFor';
import { applyCorrection, setClear, unaccountedEntry } from '../../../src/model/weigh/correction';
import type { HeldAgainst } from '../../../src/model/weigh/heldAgainst';
import { positionsGone } from '../../../src/model/weigh/thought';
import { agreementWords, massFigure } from '../../../src/model/words/weighWords';
import { demo } from '../../demo/demoAircraft';

const say = (units: 'metric' | 'inch-ounce') => ({
  units,
  fromMm: 0,
  length: (mm: number) => `${mm.toFixed(1)} mm`,
  station: (mm: number) => `${mm.toFixed(0)} mm`,
  mass: (g: number) => `${g.toFixed(0)} g`,
});

/** An ounce, g: 1/16 of 453.592 37 g (international yard and pound agreement, 1959). */
const OUNCE = 453.59237 / 16;

test('the ± of a mass is never said to be less than it is, in grams or in ounces', () => {
  for (let sigma = 0.01; sigma < 40; sigma *= 1.07) {
    for (const [units, size] of [
      ['metric', 1],
      ['inch-ounce', OUNCE],
    ] as const) {
      const said = Number(/± ([\d.]+)/.exec(massFigure({ value: 5000, sigma }, say(units)))?.[1]) * size;
      expect(said).toBeGreaterThanOrEqual(2 * sigma - 1e-4);
      expect(said).toBeLessThan(2 * sigma + 1.01 * (units === 'metric' ? 1 : 0.01 * OUNCE));
    }
  }
});

const off = (quantity: 'station' | 'waterline', value: number): Difference => ({
  measurementId: 'one',
  quantity,
  predicted: { value: 0, sigma: 1 },
  measured: { value, sigma: 0 },
  difference: { value, sigma: 1 },
});

const disagreeing = (differences: readonly Difference[], chance: number): HeldAgainst =>
  ({
    by: 'lines',
    reconciled: { agrees: false, confidence: 0.95, chance, differences } as Partial<Reconciled>,
  }) as HeldAgainst;

test('errors that go together may disagree with no figure far out by itself: the worst is named', () => {
  const words = agreementWords(
    disagreeing([off('station', 0.6), off('waterline', -0.9)], 0.01),
    say('metric'),
  );
  expect(words).toContain('measured, it is 0.9\u202fmm lower.');
});

test('chance is never said to be likelier than it is', () => {
  for (const chance of [0.0499, 0.0333, 0.003, 0.00027]) {
    const words = agreementWords(disagreeing([off('station', 4)], chance), say('metric'));
    const times = Number(/1 time in ([\d\u202f]+)/.exec(words)?.[1]?.replace('\u202f', ''));
    expect(1 / times).toBeLessThanOrEqual(chance + 1e-9);
    expect(1 / (times - 1)).toBeGreaterThan(chance - 1e-9);
  }
});

test('something unaccounted for whose height was measured is put at that height and stays there', () => {
  const figure = (value: number) => ({ value, sigma: 1 });
  const unaccounted: UnaccountedFor = {
    massG: { value: 80, sigma: 2 },
    placeMm: [figure(400), null, figure(85.3)],
    momentGmm: [0, 0, 0],
  };
  const aircraft = demo('sandmartin');
  const clear = setClear(aircraft, unaccountedEntry(unaccounted)!, { buttline: false, waterline: true });
  const added = applyCorrection(aircraft, clear).parts.at(-1);
  expect([added?.positionMm[0], added?.positionMm[2]]).toEqual([400, 85.3]);
  expect(added?.notes).not.toContain('height');
});

test('a switch noted at a weigh-in and taken out of the list since is named', () => {
  const aircraft = demo('sandmartin');
  const there = aircraft.switches?.[0];
  const kept = there ? [{ switchId: there.id, positionId: there.positions[0]!.id }] : [];
  expect(positionsGone(aircraft, { switches: [...kept, { switchId: 'skis', positionId: 'on' }] })).toEqual([
    'skis',
  ]);
  if (!there) return;
  const moved = { switches: [{ switchId: there.id, positionId: 'never' }] };
  expect(positionsGone(aircraft, moved)).toEqual([`${there.name}: never`]);
});
