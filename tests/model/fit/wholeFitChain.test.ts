import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { updatePart, updateTank } from '../../../src/model/document/edit';
import type { Aircraft } from '../../../src/model/document/types';
import { type WholeFit, wholeFit } from '../../../src/model/fit/wholeFit';
import { demo, NAMES } from '../../demo/demoAircraft';
import { randomFrom } from '../../randomFrom';

const seed = 20;
const list = ({ problems }: WholeFit) =>
  problems
    .map(({ key, kind, byMm, states, severity }) => [
      `${key} ${kind} ${severity} ${states.map((one) => `${one.switchId} ${one.positions.map(({ id }) => id)}`)}`,
      byMm,
    ])
    .sort((a, b) => (String(a[0]) < String(b[0]) ? -1 : 1));

/** A few items somewhere else, or turned. */
function shuffled(aircraft: Aircraft, random: () => number): Aircraft {
  let next = aircraft;
  const items = [...aircraft.parts, ...aircraft.tanks];
  for (let n = 0; n < 1 + 2 * random(); n += 1) {
    const { id, positionMm } = items[Math.floor(random() * items.length)]!;
    const [x, y, z] = positionMm.map((mm) => mm + 120 * (random() - 0.5)) as [number, number, number];
    const change = { positionMm: [x, y / 2, z] as Vec3, yawDeg: random() < 0.3 ? 360 * random() : 0 };
    next = updateTank(updatePart(next, id, change), id, change);
  }
  return next;
}

describe.each(NAMES)('%s', { timeout: 60_000 }, (name) => {
  test(`judged step by step it is as if judged afresh (seed ${seed})`, () => {
    const random = randomFrom(seed);
    let aircraft = demo(name);
    let most = 0;
    for (let step = 0; step < 5; step += 1) {
      aircraft = shuffled(aircraft, random);
      const kept = list(wholeFit(aircraft));
      // Copies of all parts and tanks have nothing in common with what was judged before.
      const [parts, tanks] = [structuredClone(aircraft.parts), structuredClone(aircraft.tanks)];
      const fresh = list(wholeFit({ ...aircraft, parts, tanks }));
      expect(kept.map(([key]) => key)).toEqual(fresh.map(([key]) => key));
      kept.forEach(([, byMm], i) => {
        // Depths are right to a thousandth of themselves, whichever of the two is asked first.
        expect(Math.abs(Number(byMm) - Number(fresh[i]![1]))).toBeLessThan(1e-6 + 2e-3 * Number(byMm));
      });
      most = Math.max(most, kept.length);
    }
    expect(most).toBeGreaterThan(2);
  });
});
