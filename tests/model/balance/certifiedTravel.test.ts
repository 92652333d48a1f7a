import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { downFromAttitude } from '../../../src/engine/liquid/attitude';
import { feedBreaks } from '../../../src/engine/liquid/feedBreaks';
import { inLoadState } from '../../../src/model/airframe/loadSwitches';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { MOST_FUEL_STATES, plumbingOf } from '../../../src/model/balance/liquidTable';
import { blankAircraft } from '../../../src/model/document/blank';
import type { Aircraft, TankItem } from '../../../src/model/document/types';
import { feedFindings } from '../../../src/model/loads/feedFindings';
import { loadEnvelopeOf } from '../../../src/model/loads/loadStates';
import { between } from '../../between';
import { boxPart } from '../aircraft';

const number = (min: number, max: number) => between(min, max);
const shapes = fc.oneof(
  fc.record({
    kind: fc.constant('box' as const),
    lengthMm: number(60, 260),
    widthMm: number(30, 90),
    heightMm: number(25, 70),
  }),
  fc.record({
    kind: fc.constant('cylinder' as const),
    lengthMm: number(60, 260),
    diameterMm: number(30, 80),
  }),
);

const tankAt = (id: string, feeds: string): fc.Arbitrary<TankItem> =>
  fc
    .tuple(shapes, number(150, 900), number(-40, 40), fc.constantFrom(0, 10), fc.constantFrom(0, 0, 12))
    .map(([shape, x, z, unusableMl, pitchDeg]) => ({
      id,
      name: id,
      shape,
      positionMm: [x, 0, z],
      yawDeg: 0,
      pitchDeg,
      rollDeg: 0,
      emptyMassG: 40,
      startMl: null,
      unusableMl,
      feeds,
      rank: 0,
    }));

const aircraft: fc.Arbitrary<Aircraft> = fc
  .tuple(
    fc.oneof(
      fc.tuple(tankAt('main', 'header'), tankAt('header', 'outlet')),
      fc.tuple(tankAt('a', 'b'), tankAt('b', 'c'), tankAt('c', 'outlet')),
      fc.tuple(tankAt('a', 'outlet'), tankAt('b', 'outlet')),
    ),
    number(2500, 6000),
    number(300, 700),
    fc.constantFrom('volume' as const, 'level' as const),
  )
  .map(([tanks, massG, x, share]) => ({
    ...blankAircraft(),
    parts: [boxPart('airframe', massG, [x, 0, 0])],
    tanks,
    fuel: {
      kind: 'petrol',
      name: 'Petrol',
      densityGPerMl: 0.74,
      use: 'burn',
      share,
    } as unknown as Aircraft['fuel'],
  }));

const DOWNS = [
  LEVEL,
  ...[30, -45].map((pitchDeg) => downFromAttitude({ pitchDeg, rollDeg: 0, forwardG: 0, sideG: 0 })),
];

describe('the ends of the travel', () => {
  /** Against the CG at 150 fuel states between the travel's own, and at and beside every change of the feed. */
  test('no fuel state lies beyond them by more than is said, and that is at most 0.05 mm', () => {
    fc.assert(
      fc.property(aircraft, fc.constantFrom(...DOWNS), (own, down) => {
        const { travel, travelWithinMm } = balanceAt(own, { fuelFraction: 1, down });
        expect(travelWithinMm).toBeLessThanOrEqual(0.05);
        expect(travel.length).toBeLessThanOrEqual(MOST_FUEL_STATES);
        const stations = travel.map(({ cgMm }) => cgMm[0]);
        const [least, most] = [Math.min(...stations), Math.max(...stations)];
        const plumbed = plumbingOf(own)!;
        const kinks = feedBreaks(plumbed, down).map((ml) => 1 - ml / plumbed.usableMl);
        const fractions = [
          ...Array.from({ length: 150 }, (_, i) => (i + 0.371) / 150),
          ...kinks.flatMap((at) => [at, at - 1e-4, at + 1e-4]),
        ].filter((at) => at >= 0 && at <= 1);
        for (const fuelFraction of fractions) {
          const x = balanceAt(own, { fuelFraction, down }).cgMm![0];
          expect(x).toBeGreaterThan(least - travelWithinMm - 1e-9);
          expect(x).toBeLessThan(most + travelWithinMm + 1e-9);
        }
      }),
      { numRuns: 20 },
    );
  });

  test('the moment at which the header begins to give is one of the fuel states', () => {
    const [main, header] = [600, 150].map(
      (heightMm, k): TankItem => ({
        id: k === 0 ? 'main' : 'header',
        name: '',
        shape: { kind: 'box', lengthMm: 100, widthMm: 10, heightMm },
        positionMm: [k === 0 ? 200 : 800, 0, 0],
        yawDeg: 0,
        pitchDeg: 0,
        rollDeg: 0,
        emptyMassG: 0,
        startMl: null,
        unusableMl: 0,
        feeds: k === 0 ? 'header' : 'outlet',
        rank: 0,
      }),
    );
    const own: Aircraft = {
      ...blankAircraft(),
      parts: [boxPart('airframe', 1000, [500, 0, 0])],
      tanks: [main!, header!],
      fuel: {
        kind: 'petrol',
        name: '',
        densityGPerMl: 1,
        use: 'burn',
        share: 'volume',
      } as unknown as Aircraft['fuel'],
    };
    const { fit } = balanceAt(
      { ...own, targetBand: { by: 'station', forwardMm: 400, aftMm: 530 } as Aircraft['targetBand'] },
      { fuelFraction: 1, down: LEVEL },
    );
    // 600 ml ahead are gone and 150 ml behind are all there: (1000·500 + 150·800)/1150.
    expect(fit!.aftmost.cgMm[0]).toBeCloseTo(620_000 / 1150, 9);
    expect(fit!.aftmost.fuelFraction).toBeCloseTo(150 / 750, 9);
  });
});

test('a tank that fed one which is taken off feeds what that one fed', () => {
  const tank = (id: string, feeds: string): TankItem => ({
    id,
    name: id,
    shape: { kind: 'box', lengthMm: 100, widthMm: 100, heightMm: 20 },
    positionMm: [500, 0, 0],
    yawDeg: 0,
    pitchDeg: 0,
    rollDeg: 0,
    emptyMassG: 30,
    startMl: null,
    unusableMl: 0,
    feeds,
    rank: 0,
  });
  const own: Aircraft = {
    ...blankAircraft(),
    tanks: [tank('main', 'header'), tank('header', 'trap'), tank('trap', 'outlet')],
    switches: [
      {
        id: 'header',
        name: 'Header',
        positions: [
          { id: 'on', name: 'on' },
          { id: 'off', name: 'off', without: ['header'] },
        ],
      },
    ],
  };
  expect(inLoadState(own, { header: 'off' }).tanks.map(({ feeds }) => feeds)).toEqual(['trap', 'outlet']);
});

describe('tanks that cannot feed', () => {
  /** Level sharing of two that feed the outlet, one of them fed by a third: its level cannot fall with the other's. */
  test('keep their fuel aboard, and it is said why nothing can be drawn', () => {
    const tank = (id: string, feeds: string): TankItem => ({
      id,
      name: id,
      shape: { kind: 'box', lengthMm: 100, widthMm: 100, heightMm: 20 },
      positionMm: [500, 0, 0],
      yawDeg: 0,
      pitchDeg: 0,
      rollDeg: 0,
      emptyMassG: 30,
      startMl: null,
      unusableMl: 0,
      feeds,
      rank: 0,
    });
    const own: Aircraft = {
      ...blankAircraft(),
      tanks: [
        tank('left', 'header'),
        tank('right', 'outlet'),
        tank('tip', 'right'),
        { ...tank('header', 'outlet'), rank: 1 },
      ],
      fuel: {
        kind: 'petrol',
        name: '',
        densityGPerMl: 0.8,
        use: 'burn',
        share: 'level',
      } as unknown as Aircraft['fuel'],
      switches: [
        {
          id: 'header',
          name: 'Header tank',
          positions: [
            { id: 'on', name: 'on' },
            { id: 'off', name: 'off', without: ['header'] },
          ],
        },
      ],
    };
    const off = balanceAt(own, { fuelFraction: 1, down: LEVEL, positions: { header: 'off' } });
    expect(off.massG).toBeCloseTo(3 * 30 + 3 * 200 * 0.8, 9);
    expect(off.usableMl).toBe(0);
    expect(off.liquid.feedFaults.join(' ')).toMatch(/“right” shares by level but is fed by tank “tip”/);
    expect(balanceAt(own, { fuelFraction: 1, down: LEVEL }).liquid.feedFaults).toEqual([]);
    const [finding, ...more] = feedFindings(own);
    expect(more).toEqual([]);
    expect(finding!.positions).toEqual({ header: 'off' });
    expect(finding!.sentence).toMatch(/^With “Header tank” off nothing can be drawn .* “tip”/);
    // And the search through the load states has the fuel aboard there as well.
    expect(loadEnvelopeOf(own, LEVEL)!.heaviest.massG).toBeCloseTo(4 * 30 + 4 * 200 * 0.8, 9);
  });
});
