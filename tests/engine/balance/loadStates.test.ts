import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestLoad } from '../../../src/engine/balance/bestLoad';
import {
  type LoadEnvelope,
  type LoadState,
  type LoadStates,
  type LoadSwitch,
  loadEnvelope,
} from '../../../src/engine/balance/loadStates';
import { type LiquidMoment, type MassMoment, momentOf } from '../../../src/engine/balance/travel';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { massPoint, massSum, noMass } from '../../../src/engine/mass/massProperties';
import type { MassProperties } from '../../../src/engine/mass/types';
import { between } from '../../between';

const noFuel = (fuelFraction: number): LiquidMoment => ({ fuelFraction, massG: 0, momentGmm: [0, 0, 0] });
const number = (min: number, max: number) => between(min, max);
const masses = fc
  .tuple(fc.oneof(fc.constant(0), number(1, 800)), number(0, 1200), number(-600, 600))
  .map(([massG, x, y]) => massPoint(massG, [x, y, 0]));
const fixedMasses = fc
  .tuple(number(500, 6000), number(300, 700), number(-5, 5))
  .map(([massG, x, y]) => massPoint(massG, [x, y, 0]));
const switchesOf = (most: number) =>
  fc.array(fc.array(masses, { minLength: 1, maxLength: 3 }), { maxLength: most }).map((all): LoadSwitch[] =>
    all.map((positions, k) => ({
      id: `s${k}`,
      name: `switch ${k}`,
      positions: positions.map((mass, p) => ({
        id: `p${p}`,
        name: `position ${p}`,
        load: momentOf(mass),
      })),
    })),
  );

/** The body that a load stands for. */
const pointOf = ({ massG, momentGmm }: MassMoment): MassProperties =>
  massPoint(massG, momentGmm.map((m) => (massG > 0 ? m / massG : 0)) as unknown as Vec3);

/** Every combination of the switches, one list of what it puts aboard for each. */
const combinations = (switches: readonly LoadSwitch[]): MassProperties[][] =>
  switches.reduce<MassProperties[][]>(
    (all, { positions }) => all.flatMap((one) => positions.map(({ load }) => [...one, pointOf(load)])),
    [[]],
  );

/**
 * Liquid drawn from one place after another, each place a run of the surface's centroid from `from` to `to` (so within the
 * box of the two). Drawing 1 g at r takes r from the moment; the moment is the integral, a quadratic in what is left.
 */
interface Stretch {
  readonly massG: number;
  readonly from: Vec3;
  readonly to: Vec3;
}
const points = fc.tuple(number(200, 900), number(-300, 300)).map(([x, y]): Vec3 => [x, y, 0]);
const burns = fc.array(fc.record({ massG: number(10, 900), from: points, to: points }), {
  minLength: 1,
  maxLength: 4,
});

function burnOf(stretches: readonly Stretch[]): Pick<LoadStates, 'liquidAt' | 'breaks' | 'tanksMm'> {
  const total = stretches.reduce((sum, { massG }) => sum + massG, 0);
  const breaks = [0];
  for (const { massG } of stretches) breaks.push(Math.min(1, breaks.at(-1)! + massG / total));
  breaks[breaks.length - 1] = 1;
  const liquidAt = (fuelFraction: number): LiquidMoment => {
    const moment = [0, 0, 0];
    let left = fuelFraction * total;
    for (const { massG, from, to } of stretches) {
      const held = Math.min(left, massG);
      left -= held;
      for (let axis = 0; axis < 3; axis += 1) {
        moment[axis]! += held * (from[axis]! + ((to[axis]! - from[axis]!) * held) / (2 * massG));
      }
    }
    return { fuelFraction, massG: fuelFraction * total, momentGmm: moment as unknown as Vec3 };
  };
  const all = stretches.flatMap(({ from, to }) => [from, to]);
  const end = (axis: number, pick: (...values: number[]) => number) => pick(...all.map((p) => p[axis]!));
  return {
    liquidAt,
    breaks,
    tanksMm: [
      {
        min: [end(0, Math.min), end(1, Math.min), 0],
        max: [end(0, Math.max), end(1, Math.max), 0],
      },
    ],
  };
}

/** Sums a reported state afresh from the positions and the fuel that it names. */
function resummed(states: LoadStates, state: LoadState): MassProperties {
  const liquid = pointOf(states.liquidAt(state.fuelFraction));
  const chosen = states.switches.map(({ id, positions }) =>
    pointOf(positions.find((position) => position.id === state.positions[id])!.load),
  );
  return massSum([states.fixed, liquid, ...chosen]);
}

const ends = (envelope: LoadEnvelope) =>
  [
    [envelope.foremost, 0, -1],
    [envelope.aftmost, 0, 1],
    [envelope.leftmost, 1, -1],
    [envelope.rightmost, 1, 1],
  ] as const;

describe('the best combination for one amount of fuel', () => {
  test('is that of all combinations, gone through one by one', () => {
    fc.assert(
      fc.property(fixedMasses, switchesOf(7), (fixed, switches) => {
        const best = bestLoad(
          switches.map(({ positions }) =>
            positions.map(({ load: { massG, momentGmm } }) => ({ massG, momentGmm: momentGmm[0] })),
          ),
          { massG: fixed.massG, momentGmm: fixed.massG * fixed.cgMm![0] },
        );
        const all = combinations(switches).map((aboard) => massSum([fixed, ...aboard]).cgMm![0]);
        expect(best.cgMm).toBeCloseTo(Math.max(...all), 8);
      }),
    );
  });

  test('sixty switches are no burden', () => {
    const switches = Array.from({ length: 60 }, (_, k) => [
      { massG: 0, momentGmm: 0 },
      { massG: 10, momentGmm: 10 * (k < 30 ? 100 : 900) },
    ]);
    // 1000 g at 500: only what lies aft of the result is worth having, all thirty of it.
    const best = bestLoad(switches, { massG: 1000, momentGmm: 500_000 });
    expect(best.cgMm).toBeCloseTo((500_000 + 30 * 9000) / 1300, 9);
    expect(best.chosen).toEqual(switches.map((_, k) => (k < 30 ? 0 : 1)));
  });
});

describe('the envelope over all load states and all fuel', () => {
  test('no load state tried lies outside it, and every end of it is a load state', () => {
    fc.assert(
      fc.property(fixedMasses, switchesOf(4), burns, (fixed, switches, stretches) => {
        const states: LoadStates = { fixed, switches, ...burnOf(stretches) };
        const envelope = loadEnvelope(states)!;
        for (const [end, axis] of ends(envelope)) {
          const sum = resummed(states, end);
          expect(sum.cgMm![axis]).toBeCloseTo(end.cgMm[axis], 8);
          expect(sum.massG).toBeCloseTo(end.massG, 8);
          // The tolerance asked for, and a millionth for the rounding that the certificate pads itself against.
          expect(end.withinMm).toBeLessThanOrEqual(0.01 + 1e-6);
        }
        let outMm = 0;
        let outG = 0;
        const combos = combinations(switches).map((aboard) => massSum([fixed, ...aboard]));
        for (let i = 0; i <= 150; i += 1) {
          const liquid = states.liquidAt(i / 150);
          for (const { massG, cgMm } of combos) {
            const total = massG + liquid.massG;
            outG = Math.max(outG, total - envelope.heaviest.massG, envelope.lightest.massG - total);
            for (const [end, axis, sign] of ends(envelope)) {
              const cg = (massG * cgMm![axis] + liquid.momentGmm[axis]) / total;
              outMm = Math.max(outMm, sign * (cg - end.cgMm[axis]) - end.withinMm!);
            }
          }
        }
        expect(outMm).toBeLessThan(1e-8);
        expect(outG).toBeLessThan(1e-8);
      }),
      { numRuns: 40 },
    );
  });

  test('names the switches and the fuel that cause each end', () => {
    const states: LoadStates = {
      fixed: massPoint(5000, [600, 0, 0]),
      switches: [
        {
          id: 'gear',
          name: 'undercarriage',
          positions: [
            { id: 'up', name: 'up', load: momentOf(massPoint(400, [650, 0, 0])) },
            { id: 'down', name: 'down', load: momentOf(massPoint(400, [560, 0, -80])) },
          ],
        },
        {
          id: 'pod',
          name: 'left pod',
          positions: [
            { id: 'off', name: 'off', load: momentOf(massPoint(0, [0, 0, 0])) },
            { id: 'on', name: 'on', load: momentOf(massPoint(200, [620, -400, 0])) },
          ],
        },
      ],
      liquidAt: (f) => ({ fuelFraction: f, massG: 800 * f, momentGmm: [800 * f * 500, 0, 0] }),
      breaks: [0, 1],
    };
    const envelope = loadEnvelope(states)!;
    // Full fuel ahead of everything, gear down forward, pod aft of the CG off.
    expect(envelope.foremost).toMatchObject({ fuelFraction: 1, positions: { gear: 'down', pod: 'off' } });
    expect(envelope.foremost.cgMm[0]).toBeCloseTo((5000 * 600 + 400 * 560 + 800 * 500) / 6200, 9);
    expect(envelope.aftmost).toMatchObject({ fuelFraction: 0, positions: { gear: 'up', pod: 'on' } });
    expect(envelope.leftmost).toMatchObject({ fuelFraction: 0, positions: { gear: 'up', pod: 'on' } });
    expect(envelope.heaviest).toMatchObject({
      massG: 6400,
      fuelFraction: 1,
      positions: { gear: 'up', pod: 'on' },
    });
    expect(envelope.lightest).toMatchObject({
      massG: 5400,
      fuelFraction: 0,
      positions: { gear: 'up', pod: 'off' },
    });
  });

  test('of load states that tie, it is the one with most fuel and the positions listed first', () => {
    const twin = massPoint(100, [800, 0, 0]);
    const states: LoadStates = {
      fixed: massPoint(1000, [500, 0, 0]),
      switches: [
        {
          id: 'a',
          name: 'twins',
          positions: [
            { id: 'one', name: 'one', load: momentOf(twin) },
            { id: 'two', name: 'two', load: momentOf(twin) },
          ],
        },
      ],
      liquidAt: noFuel,
      breaks: [1, 0.3, 0],
    };
    const envelope = loadEnvelope(states)!;
    for (const state of [...ends(envelope).map(([end]) => end), envelope.heaviest, envelope.lightest]) {
      expect(state).toMatchObject({ fuelFraction: 1, positions: { a: 'one' } });
    }
    // Liquid at the CG itself: it makes no difference how much there is.
    const atCg = (f: number): LiquidMoment => ({
      fuelFraction: f,
      massG: 300 * f,
      momentGmm: [150_000 * f, 0, 0],
    });
    const level = loadEnvelope({ ...states, switches: [], liquidAt: atCg, breaks: [0, 0.3, 1] })!;
    expect([level.foremost.fuelFraction, level.aftmost.fuelFraction]).toEqual([1, 1]);
  });

  test('a position whose mass lies at the extreme CG makes no difference, so the first listed is named', () => {
    fc.assert(
      fc.property(number(100, 900), number(1000, 9000), number(10, 900), (x, massG, extraG) => {
        const positions = [noMass, massPoint(extraG, [x, 0, 0])].map((mass, k) => ({
          id: `p${k}`,
          name: '',
          load: momentOf(mass),
        }));
        for (const listed of [positions, positions.toReversed()]) {
          const envelope = loadEnvelope({
            fixed: massPoint(massG, [x, 0, 0]),
            switches: [{ id: 'a', name: 'pack', positions: listed }],
            liquidAt: noFuel,
            breaks: [1],
          })!;
          expect(envelope.foremost.positions).toEqual({ a: listed[0]!.id });
          expect(envelope.aftmost.positions).toEqual({ a: listed[0]!.id });
        }
      }),
    );
  });

  test('no mass, no fuel and broken input', () => {
    const states: LoadStates = {
      fixed: massPoint(10, [3, 4, 5]),
      switches: [],
      liquidAt: noFuel,
      breaks: [1],
    };
    expect(loadEnvelope(states)!.foremost).toMatchObject({ cgMm: [3, 4, 5], massG: 10 });
    expect(loadEnvelope({ ...states, fixed: massPoint(0, [0, 0, 0]) })).toBeNull();
    expect(() => loadEnvelope({ ...states, breaks: [] })).toThrow('at least one');
    expect(() => loadEnvelope({ ...states, breaks: [1, Number.NaN] })).toThrow('NaN');
    const bare = [{ id: 'a', name: 'canopy', positions: [] }];
    expect(() => loadEnvelope({ ...states, switches: bare })).toThrow('canopy');
  });
});
