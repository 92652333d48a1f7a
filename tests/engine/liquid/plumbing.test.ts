import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { feedBreaks } from '../../../src/engine/liquid/feedBreaks';
import { fuelStates, type Plumbing, plumbing, tankVolumesAfter } from '../../../src/engine/liquid/plumbing';
import type { Tank } from '../../../src/engine/liquid/types';
import { massSum } from '../../../src/engine/mass/massProperties';
import type { Shape } from '../../../src/engine/mass/shapes';
import { between } from '../../between';
import { anyDown } from './tankShapes';

const LEVEL: Vec3 = [0, 0, -1];

/** A box tank of so many ml: 100 mm long, 100 mm wide. */
const boxOf = (volumeMl: number): Shape => ({
  kind: 'box',
  lengthMm: 100,
  widthMm: 100,
  heightMm: volumeMl / 10,
});

function tank(id: string, volumeMl: number, rest: Partial<Tank> = {}): Tank {
  return {
    id,
    name: id,
    shape: boxOf(volumeMl),
    pose: { positionMm: [0, 0, 0], yawDeg: 0, pitchDeg: 0, rollDeg: 0 },
    mirrored: false,
    densityGPerMl: 0.8,
    startMl: volumeMl,
    unusableMl: 0,
    feeds: 'outlet',
    rank: 0,
    share: 'volume',
    ...rest,
  };
}

function plumbed(tanks: readonly Tank[]): Plumbing {
  const result = plumbing(tanks);
  if ('faults' in result) throw new Error(result.faults.join(' '));
  return result;
}

const faultsOf = (tanks: readonly Tank[]): readonly string[] => {
  const result = plumbing(tanks);
  return 'faults' in result ? result.faults : [];
};

function expectVolumes(came: readonly number[], expected: readonly number[]) {
  expect(came).toHaveLength(expected.length);
  came.forEach((ml, i) => {
    expect(Math.abs(ml - expected[i]!)).toBeLessThan(1e-9);
  });
}

describe('worked by hand: two saddles and a main tank feed a header', () => {
  // Saddles drain first and together, 300 ml each with 20 ml unusable in the left one; then the main tank, 900 ml with
  // 50 ml unusable; last the header, 150 ml.
  const system = plumbed([
    tank('left', 300, { feeds: 'header', unusableMl: 20 }),
    tank('main', 900, { feeds: 'header', rank: 1, unusableMl: 50 }),
    tank('right', 300, { feeds: 'header' }),
    tank('header', 150),
  ]);

  test('usable is all but what stays behind', () => {
    expect(system.usableMl).toBe(280 + 850 + 300 + 150);
  });

  test.each([
    [0, [300, 900, 300, 150]],
    [-5, [300, 900, 300, 150]],
    // 290 of the saddles' 580 usable: half of each one's usable.
    [290, [160, 900, 150, 150]],
    [580, [20, 900, 0, 150]],
    [1000, [20, 480, 0, 150]],
    [1430, [20, 50, 0, 150]],
    [1500, [20, 50, 0, 80]],
    [1580, [20, 50, 0, 0]],
    [9999, [20, 50, 0, 0]],
  ])('after %f ml', (drawn, expected) => {
    expectVolumes(tankVolumesAfter(system, drawn, LEVEL), expected);
  });

  test('the feed changes at 0, 580, 1430 and 1580 ml', () => {
    expectVolumes(feedBreaks(system, LEVEL), [0, 580, 1430, 1580]);
  });

  test('fuel states carry the volumes by fraction left', () => {
    const [full, dry] = fuelStates(system, [1, 0], LEVEL);
    expect(massSum(full!.map(({ mass }) => mass)).massG).toBeCloseTo(1650 * 0.8, 9);
    expect(massSum(dry!.map(({ mass }) => mass)).massG).toBeCloseTo(70 * 0.8, 9);
    expect(dry!.map(({ tankId }) => tankId)).toEqual(['left', 'main', 'right', 'header']);
  });
});

test('air that a header starts with stays in it', () => {
  const system = plumbed([tank('main', 500, { feeds: 'header' }), tank('header', 150, { startMl: 100 })]);
  expectVolumes(tankVolumesAfter(system, 200, LEVEL), [300, 100]);
  expectVolumes(tankVolumesAfter(system, 550, LEVEL), [0, 50]);
});

test('a tank that starts below its unusable rest gives nothing and keeps it', () => {
  const system = plumbed([tank('a', 100, { startMl: 5, unusableMl: 10 }), tank('b', 100)]);
  expect(system.usableMl).toBe(100);
  expectVolumes(tankVolumesAfter(system, 40, LEVEL), [5, 60]);
});

test('two branches that share by volume run dry together, each in its own order', () => {
  // The left wing's tip tank empties into its root tank; the right wing has a root tank only.
  const system = plumbed([
    tank('left tip', 100, { feeds: 'left root' }),
    tank('left root', 200),
    tank('right root', 150),
  ]);
  // 90 of 450: a fifth of each branch.
  expectVolumes(tankVolumesAfter(system, 90, LEVEL), [40, 200, 120]);
  expectVolumes(tankVolumesAfter(system, 300, LEVEL), [0, 100, 50]);
  expectVolumes(feedBreaks(system, LEVEL), [0, 150, 450]);
});

describe('two boxes with their surfaces level', () => {
  // Floors at waterline 0 and 20. Plans 100 cm² and 50 cm², so 10 and 5 ml per mm of height.
  const low: Shape = { kind: 'box', lengthMm: 100, widthMm: 100, heightMm: 80 };
  const high: Shape = { kind: 'box', lengthMm: 100, widthMm: 50, heightMm: 80 };
  const at = (z: number) => ({ positionMm: [0, 0, z] as const, yawDeg: 0, pitchDeg: 0, rollDeg: 0 });
  const pair = (rest: Partial<Tank> = {}) =>
    plumbed([
      tank('low', 0, { shape: low, pose: at(40), startMl: 800, share: 'level', ...rest }),
      tank('high', 0, { shape: high, pose: at(60), startMl: 400, share: 'level' }),
    ]);

  test.each([
    // The high tank's surface stands at 100, the low one's at 80: it falls alone for 100 ml.
    [50, [800, 350]],
    [100, [800, 300]],
    // Then both, 10 + 5 ml for each mm.
    [250, [700, 250]],
    [1000, [200, 0]],
    [1100, [100, 0]],
    [1200, [0, 0]],
  ])('after %f ml', (drawn, expected) => {
    expectVolumes(tankVolumesAfter(pair(), drawn, LEVEL), expected);
  });

  test('an unusable rest holds its tank back', () => {
    // 300 ml are the low tank's lowest 30 mm: once the level is there, the high one gives alone.
    const system = pair({ unusableMl: 300 });
    expectVolumes(tankVolumesAfter(system, 100 + 15 * 50, LEVEL), [300, 50]);
    expectVolumes(tankVolumesAfter(system, 100 + 15 * 50 + 30, LEVEL), [300, 20]);
    expectVolumes(feedBreaks(system, LEVEL), [0, 100, 850, 900]);
  });

  test('upside down the other tank is the higher', () => {
    // Up is now −z: surfaces at the aircraft’s waterlines 0 and 20, so the low-mounted tank falls first, by 20 mm.
    expectVolumes(tankVolumesAfter(pair(), 150, [0, 0, 1]), [650, 400]);
    expectVolumes(tankVolumesAfter(pair(), 230, [0, 0, 1]), [580, 390]);
  });

  test('equal tanks side by side stay equal level, and differ by the lean', () => {
    const y = (mm: number) => ({ positionMm: [0, mm, 0] as const, yawDeg: 0, pitchDeg: 0, rollDeg: 0 });
    const system = plumbed([
      tank('left', 800, { pose: y(-100), share: 'level', startMl: 600 }),
      tank('right', 800, { pose: y(100), share: 'level', startMl: 600 }),
    ]);
    expectVolumes(tankVolumesAfter(system, 400, LEVEL), [400, 400]);
    const slope = 0.05;
    const [left, right] = tankVolumesAfter(system, 400, [0, slope, -1]);
    // One level across both: middles 200 mm apart differ by 200 · slope mm of height, 10 ml per mm; right is low, so it
    // keeps the more.
    expect(right! - left!).toBeCloseTo(200 * slope * 10, 8);
  });
});

/** Up to five tanks in a random tree: each feeds the outlet or a tank before it. */
const anySystem = (share: Tank['share']) =>
  fc
    .array(
      fc.record({
        volume: between(20, 900),
        start: between(0, 1),
        unusable: between(0, 0.2),
        target: fc.nat(),
        rank: fc.nat({ max: 2 }),
        z: between(-60, 60),
      }),
      { minLength: 1, maxLength: 5 },
    )
    .map((list) =>
      list.map(({ volume, start, unusable, target, rank, z }, i) =>
        tank(`t${i}`, volume, {
          startMl: volume * start,
          unusableMl: volume * unusable,
          feeds: share === 'level' || target % (i + 1) === i ? 'outlet' : `t${target % (i + 1)}`,
          rank,
          share,
          pose: { positionMm: [0, i * 120, z], yawDeg: 0, pitchDeg: 0, rollDeg: 0 },
        }),
      ),
    );

describe.each(['volume', 'level'] as const)('any tanks sharing by %s', (share) => {
  const total = (list: readonly number[]) => list.reduce((sum, v) => sum + v, 0);

  test('nothing is lost, no tank fills or falls below its rest, and the end is the unusable', () => {
    fc.assert(
      fc.property(anySystem(share), between(0, 1), anyDown, (tanks, part, down) => {
        const system = plumbed(tanks);
        const startMl = total(tanks.map((t) => t.startMl));
        const volumes = tankVolumesAfter(system, part * system.usableMl, down);
        expect(Math.abs(startMl - part * system.usableMl - total(volumes))).toBeLessThan(
          1e-9 * startMl + 1e-12,
        );
        volumes.forEach((ml, i) => {
          expect(ml).toBeLessThan(tanks[i]!.startMl + 1e-9);
          expect(ml).toBeGreaterThan(Math.min(tanks[i]!.startMl, tanks[i]!.unusableMl) - 1e-9);
        });
        expectVolumes(
          tankVolumesAfter(system, system.usableMl, down),
          tanks.map((t) => Math.min(t.startMl, t.unusableMl)),
        );
      }),
      { numRuns: 80 },
    );
  });

  test('continuous, and no tank ever gains as more is drawn', () => {
    fc.assert(
      fc.property(anySystem(share), between(0, 1), anyDown, (tanks, part, down) => {
        const system = plumbed(tanks);
        const step = 1e-3;
        // A level is found to a billionth of what is in the tanks.
        const slack = 1e-9 * (1 + total(tanks.map((t) => t.startMl)));
        const a = tankVolumesAfter(system, part * system.usableMl, down);
        const b = tankVolumesAfter(system, part * system.usableMl + step, down);
        a.forEach((ml, i) => {
          expect(ml - b[i]!).toBeGreaterThan(-slack);
          expect(ml - b[i]!).toBeLessThan(step + slack);
        });
      }),
      { numRuns: 60 },
    );
  });

  test('between feed breaks every tank gives at a rate without jumps', () => {
    fc.assert(
      fc.property(anySystem(share), (tanks) => {
        const system = plumbed(tanks);
        const breaks = feedBreaks(system, LEVEL);
        expect(breaks[0]).toBe(0);
        for (let k = 1; k < breaks.length; k++) {
          const [from, to] = [breaks[k - 1]!, breaks[k]!];
          // Boxes held level give in proportion, so between breaks volumes are straight lines.
          const [a, b, c] = [0, 0.5, 1].map((t) => tankVolumesAfter(system, from + t * (to - from), LEVEL));
          b!.forEach((ml, i) => {
            expect(Math.abs(ml - (a![i]! + c![i]!) / 2)).toBeLessThan(1e-6);
          });
        }
      }),
      { numRuns: 50 },
    );
  });
});

describe('refusals', () => {
  test.each([
    [[tank('A', 100, { feeds: 'B' }), tank('B', 100, { feeds: 'A' })], /circle: “A” → “B” → “A”/],
    [[tank('A', 100, { feeds: 'B' }), tank('B', 100, { feeds: 'A' })], /No tank feeds the outlet/],
    [[tank('A', 100, { feeds: 'A' }), tank('B', 100)], /“A” feeds itself/],
    [[tank('A', 100, { feeds: 'C' }), tank('B', 100)], /“A” feeds “C”, but there is no such tank/],
    [[tank('A', 100, { feeds: '' })], /“A” feeds nothing/],
    [[tank('A', 100, { startMl: 101 })], /“A” holds 100 ml, which is less than a start of 101 ml/],
    [
      [tank('A', 100, { unusableMl: 101 })],
      /“A” holds 100 ml, which is less than an unusable rest of 101 ml/,
    ],
    [[tank('A', 100, { startMl: -1 })], /“A”: expected a start of 0 ml or more, got -1/],
    [[tank('A', 100, { unusableMl: Number.NaN })], /unusable rest of 0 ml or more, got NaN/],
    [[tank('A', 100, { densityGPerMl: 0 })], /density above 0 g\/ml, got 0/],
    [[tank('A', 100, { rank: Number.NaN })], /number for its rank/],
    [[tank('A', 100), tank('A', 100)], /same id, “A”/],
    [[tank('outlet', 100)], /id “outlet”/],
    [[tank('A', 100, { shape: { kind: 'box', lengthMm: 0, widthMm: 1, heightMm: 1 } })], /“A”/],
    [
      [tank('A', 100, { shape: { kind: 'tube', lengthMm: 9, outerDiameterMm: 8, innerDiameterMm: 6 } })],
      /“A”: A tube cannot be a tank/,
    ],
    [[tank('A', 100), tank('B', 100, { share: 'level' })], /“B” shares by level and tank “A” by volume/],
    [
      [tank('A', 100, { share: 'level' }), tank('B', 100, { share: 'level' }), tank('C', 50, { feeds: 'B' })],
      /“B” shares by level but is fed by tank “C”/,
    ],
  ])('case %#', (tanks, message) => {
    expect(faultsOf(tanks).join('\n')).toMatch(message);
  });

  test('each circle is named once', () => {
    const ring = [
      tank('A', 9, { feeds: 'B' }),
      tank('B', 9, { feeds: 'C' }),
      tank('C', 9, { feeds: 'B' }),
      tank('D', 9),
    ];
    expect(faultsOf(ring)).toEqual([
      'Tanks feed each other in a circle: “B” → “C” → “B”. Nothing in them reaches the outlet.',
    ]);
  });

  test('no tanks is an electric aircraft, not a fault', () => {
    const electric = plumbed([]);
    expect(electric.usableMl).toBe(0);
    expect(tankVolumesAfter(electric, 10, LEVEL)).toEqual([]);
    expect(feedBreaks(electric, LEVEL)).toEqual([0]);
  });

  test('NaN ml drawn', () => {
    expect(() => tankVolumesAfter(plumbed([]), Number.NaN, LEVEL)).toThrow(/got NaN/);
  });
});
