import fc from 'fast-check';
import { expect, test } from 'vitest';
import { directionFromAircraft } from '../../../src/engine/geometry/rotation';
import { downFromAttitude, LEVEL } from '../../../src/engine/liquid/attitude';
import { between } from '../../between';

const near = (came: readonly number[], expected: readonly number[]) =>
  came.forEach((v, i) => {
    expect(Math.abs(v - expected[i]!)).toBeLessThan(1e-12);
  });

test('which way liquid runs', () => {
  near(downFromAttitude(LEVEL), [0, 0, -1]);
  near(downFromAttitude({ ...LEVEL, pitchDeg: 90 }), [1, 0, 0]);
  near(downFromAttitude({ ...LEVEL, rollDeg: 90 }), [0, 1, 0]);
  near(downFromAttitude({ ...LEVEL, rollDeg: 180 }), [0, 0, 1]);
  near(downFromAttitude({ ...LEVEL, forwardG: 1 }), [Math.SQRT1_2, 0, -Math.SQRT1_2]);
  near(downFromAttitude({ ...LEVEL, sideG: 1 }), [0, -Math.SQRT1_2, -Math.SQRT1_2]);
});

test('a coordinated turn keeps liquid in the middle: sideways acceleration tan(bank) of level flight', () => {
  // Level turn at bank φ: the body's right gets cos φ · tan φ = sin φ of g.
  const [, y] = downFromAttitude({ ...LEVEL, rollDeg: 35, sideG: Math.sin((35 * Math.PI) / 180) });
  expect(Math.abs(y)).toBeLessThan(1e-12);
});

test('at rest it is the earth’s down seen in the posed body’s frame, whatever the heading', () => {
  const angle = between(-180, 180);
  fc.assert(
    fc.property(angle, angle, angle, (yawDeg, pitchDeg, rollDeg) => {
      const pose = { positionMm: [0, 0, 0] as const, yawDeg, pitchDeg, rollDeg };
      near(downFromAttitude({ ...LEVEL, pitchDeg, rollDeg }), directionFromAircraft(pose, [0, 0, -1]));
    }),
  );
});

test('free fall has no down', () => {
  expect(() => downFromAttitude({ ...LEVEL, pitchDeg: 90, forwardG: -1 })).toThrow(
    /expected a direction of down/,
  );
  expect(() => downFromAttitude({ ...LEVEL, sideG: Number.NaN })).toThrow(/NaN/);
});
