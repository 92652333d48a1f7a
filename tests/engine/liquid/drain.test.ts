import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { feedBreaks } from '../../../src/engine/liquid/feedBreaks';
import { liquidState, tankVolumeMl } from '../../../src/engine/liquid/liquidState';
import { fuelStates, plumbing, tankVolumesAfter } from '../../../src/engine/liquid/plumbing';
import type { Tank } from '../../../src/engine/liquid/types';
import type { Shape } from '../../../src/engine/mass/shapes';
import { between } from '../../between';

const LEVEL: Vec3 = [0, 0, -1];
const size = between(12, 260);
const anyShape: fc.Arbitrary<Shape> = fc.oneof(
  fc.record({ kind: fc.constant('box' as const), lengthMm: size, widthMm: size, heightMm: size }),
  fc.record({ kind: fc.constant('cylinder' as const), lengthMm: size, diameterMm: size }),
  fc.tuple(size, size).map(([a, b]): Shape => ({ kind: 'capsule', lengthMm: a + b, diameterMm: b })),
);

/** A tank full to the brim with nothing unusable. */
const brimful = (id: string, shape: Shape, feeds: string, rest: Partial<Tank> = {}): Tank => {
  const tank: Tank = {
    id,
    name: id,
    shape,
    pose: { positionMm: [0, 0, 0], yawDeg: 0, pitchDeg: 0, rollDeg: 0 },
    mirrored: false,
    densityGPerMl: 0.745,
    startMl: 0,
    unusableMl: 0,
    feeds,
    rank: 0,
    share: 'volume',
    ...rest,
  };
  return { ...tank, startMl: tankVolumeMl(tank) };
};

/** Main and header; a chain of several; saddles of one rank; one rank after another: all end at the outlet. */
const layouts: Readonly<Record<string, fc.Arbitrary<readonly Tank[]>>> = {
  'a main tank and its header': fc
    .tuple(anyShape, anyShape)
    .map(([main, header]) => [brimful('main', main, 'header'), brimful('header', header, 'outlet')]),
  'a chain': fc
    .array(anyShape, { minLength: 3, maxLength: 6 })
    .map((shapes) =>
      shapes.map((shape, k) => brimful(`t${k}`, shape, k + 1 < shapes.length ? `t${k + 1}` : 'outlet')),
    ),
  'saddles before a header': fc
    .array(anyShape, { minLength: 3, maxLength: 5 })
    .map(([header, ...saddles]) => [
      ...saddles.map((shape, k) => brimful(`saddle ${k}`, shape, 'header')),
      brimful('header', header!, 'outlet'),
    ]),
  'saddles of two ranks, each with a tank behind it': fc
    .array(anyShape, { minLength: 7, maxLength: 7 })
    .map(([header, ...others]) => [
      ...others
        .slice(0, 3)
        .map((shape, k) => brimful(`near ${k}`, shape, 'header', { rank: Math.min(k, 1) })),
      ...others.slice(3).map((shape, k) => brimful(`far ${k}`, shape, `near ${k}`)),
      brimful('header', header!, 'outlet'),
    ]),
};

describe('tanks full to the brim with nothing unusable', () => {
  test.each(Object.entries(layouts))('%s: no tank goes below nothing and nothing is lost', (_, layout) => {
    fc.assert(
      fc.property(layout, fc.array(between(0, 1), { maxLength: 4 }), (tanks, parts) => {
        const plumbed = plumbing(tanks);
        if ('faults' in plumbed) throw new Error(plumbed.faults.join(' '));
        const startMl = tanks.reduce((sum, tank) => sum + tank.startMl, 0);
        const amounts = [
          ...parts.map((part) => part * plumbed.usableMl),
          ...feedBreaks(plumbed, LEVEL),
          plumbed.usableMl * (1 - 1e-15),
          plumbed.usableMl,
          startMl,
        ];
        for (const drawnMl of amounts) {
          const volumes = tankVolumesAfter(plumbed, drawnMl, LEVEL);
          volumes.forEach((ml, k) => {
            expect(ml).toBeGreaterThanOrEqual(0);
            expect(ml).toBeLessThanOrEqual(tanks[k]!.startMl);
          });
          const leftMl = volumes.reduce((sum, ml) => sum + ml, 0);
          expect(Math.abs(startMl - leftMl - Math.min(drawnMl, plumbed.usableMl))).toBeLessThan(
            1e-9 * startMl,
          );
        }
        // The liquid of the last drop, and of none, can be worked out in every tank.
        for (const states of fuelStates(plumbed, [1e-15, 0], LEVEL)) {
          for (const { volumeMl, mass } of states) expect(mass.massG).toBeCloseTo(volumeMl * 0.745, 9);
        }
      }),
      { numRuns: 150 },
    );
  });
});

test('a small tank beside a large one at one level never holds more than it can', () => {
  // With next to nothing left in the large tank, the share that rounding leaves over is large for the small one.
  const cube = (edgeMm: number): Shape => ({
    kind: 'box',
    lengthMm: edgeMm,
    widthMm: edgeMm,
    heightMm: edgeMm,
  });
  const edges = between(0, 2.5).map((power) => 0.5 * 10 ** power);
  const angle = between(-180, 180);
  fc.assert(
    fc.property(fc.array(edges, { minLength: 2, maxLength: 3 }), angle, angle, (sizes, pitchDeg, rollDeg) => {
      const tanks = sizes.map((edgeMm, k) =>
        brimful(`t${k}`, cube(edgeMm), 'outlet', {
          share: 'level',
          pose: { positionMm: [0, 0, -400 * k], yawDeg: 0, pitchDeg, rollDeg },
        }),
      );
      const plumbed = plumbing(tanks);
      if ('faults' in plumbed) throw new Error(plumbed.faults.join(' '));
      const { usableMl } = plumbed;
      for (const breakMl of feedBreaks(plumbed, LEVEL)) {
        for (const drawnMl of [
          breakMl,
          breakMl * (1 - 1e-13),
          breakMl * (1 - 1e-11),
          breakMl * (1 + 1e-11),
        ]) {
          const volumes = tankVolumesAfter(plumbed, drawnMl, LEVEL);
          // The liquid of each can be worked out, which throws for more than a tank holds by a billionth.
          volumes.forEach((ml, k) => {
            expect(ml / tanks[k]!.startMl).toBeLessThan(1 + 1e-12);
            liquidState(tanks[k]!, ml, LEVEL);
          });
          const goneMl = usableMl - volumes.reduce((sum, ml) => sum + ml, 0);
          expect(Math.abs(goneMl - Math.min(drawnMl, usableMl))).toBeLessThan(1e-9 * usableMl);
        }
      }
    }),
    { numRuns: 200 },
  );
});

test('a tank never gives of what must stay behind', () => {
  fc.assert(
    fc.property(size, size, between(0, 1), (mainMl, headerMl, share) => {
      const shape: Shape = { kind: 'box', lengthMm: 100, widthMm: 100, heightMm: 10 };
      const unusableMl = share * Math.min(mainMl, headerMl);
      const tanks = [
        {
          ...brimful('main', shape, 'header'),
          shape: { ...shape, heightMm: mainMl / 10 },
          startMl: mainMl,
          unusableMl,
        },
        {
          ...brimful('header', shape, 'outlet'),
          shape: { ...shape, heightMm: headerMl / 10 },
          startMl: headerMl,
          unusableMl,
        },
      ];
      const plumbed = plumbing(tanks);
      if ('faults' in plumbed) throw new Error(plumbed.faults.join(' '));
      for (const ml of tankVolumesAfter(plumbed, plumbed.usableMl, LEVEL)) {
        expect(ml).toBeGreaterThanOrEqual(unusableMl);
        expect(ml).toBeCloseTo(unusableMl, 9);
      }
    }),
  );
});
