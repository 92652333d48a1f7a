import { expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { workingOf } from '../../../src/model/words/working';
import { aircraftOf, boxBlock, boxPart } from '../aircraft';

const aircraft = aircraftOf(
  [boxBlock('pod', [600, 200, 30], { by: 'weighed', massG: 100 }, 'both')],
  [boxPart('camera', 640, [152, 20, -20])],
);
const balance = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL });

test('each half of a pair has a line of its own that says which side it is', () => {
  const names = workingOf(aircraft, balance, 1).lines.map(({ name }) => name);
  expect(names).toContain('camera');
  const pods = names.filter((name) => name.startsWith('pod'));
  expect(new Set(pods).size).toBe(2);
  for (const name of pods) expect(name).toMatch(/^pod, (left|right)/);
});

test('each axis has its own arms: 640 g at [152, 20, −20], from a point 100 mm along it', () => {
  for (const [axis, arm] of [52, -80, -120].entries()) {
    const { lines } = workingOf(aircraft, balance, axis as 0 | 1 | 2, 100);
    const camera = lines.find(({ name }) => name === 'camera')!;
    expect(camera.armMm).toBeCloseTo(arm, 9);
    expect(camera.momentGmm).toBeCloseTo(640 * arm, 6);
  }
});
