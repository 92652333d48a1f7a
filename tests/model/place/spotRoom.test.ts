import { expect, test } from 'vitest';
import { LEVEL } from '../../../src/model/balance/balance';
import { wholeFit } from '../../../src/model/fit/wholeFit';
import { applyArrangement } from '../../../src/model/place/applyArrangement';
import { placeProblem } from '../../../src/model/place/placeProblem';
import { demo } from '../../demo/demoAircraft';

test('no spot takes more than stands inside the skin, and one that has no room is named', () => {
  const aircraft = demo('corncrake');
  const question = placeProblem(aircraft, { down: LEVEL, band: { forwardMm: 0, aftMm: 100 } });
  if ('fault' in question) throw new Error(question.fault);
  const { problem, notes } = question;
  expect(problem.spots.length).toBeGreaterThan(0);
  for (const { id, mostG } of problem.spots) {
    const loaded = applyArrangement(aircraft, problem, {
      placed: [],
      ballast: [{ spotId: id, massG: mostG }],
    });
    const outside = wholeFit(loaded).problems.filter(({ kind }) => kind === 'outside' || kind === 'through');
    const before = wholeFit(aircraft).problems.filter(({ kind }) => kind === 'outside' || kind === 'through');
    expect(outside.length, id).toBe(before.length);
  }
  // Its wing tips are thinner than any stack of lead.
  expect(notes.filter((note) => /^No ballast at .*tip/i.test(note))).toHaveLength(2);
});
