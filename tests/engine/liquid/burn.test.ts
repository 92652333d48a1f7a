import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BurnTimeline,
  burnTimeline,
  drawnAt,
  endurance,
  flowAt,
  timeAtDrawn,
  timeToReserve,
} from '../../../src/engine/liquid/burn';
import type { Flow, Phase } from '../../../src/engine/liquid/types';
import { between } from '../../between';

const FLOW: Flow = { idleMlPerMin: 60, fullMlPerMin: 360 };
const CIRCUIT: readonly Phase[] = [
  { name: 'taxi', durationS: 60, throttlePct: 0 },
  { name: 'climb', durationS: 30, throttlePct: 100 },
  { name: 'glide', durationS: 0, throttlePct: 40 },
  { name: 'cruise', durationS: 120, throttlePct: 50 },
];

function flown(phases: readonly Phase[], flow: Flow, usableMl: number): BurnTimeline {
  const result = burnTimeline(phases, flow, usableMl);
  if ('faults' in result) throw new Error(result.faults.join(' '));
  return result;
}

describe('worked by hand: 60 ml taxying, 180 climbing, 420 cruising', () => {
  test('with fuel to spare', () => {
    const timeline = flown(CIRCUIT, FLOW, 1000);
    expect(timeline).toMatchObject({ totalS: 210, drawnMl: 660, dryAtS: null, usableMl: 1000 });
    [0, 30, 60, 75, 90, 150, 210, 900].forEach((s, k) => {
      expect(drawnAt(timeline, s)).toBeCloseTo([0, 30, 60, 150, 240, 450, 660, 660][k]!, 9);
    });
    expect(drawnAt(timeline, -1)).toBe(0);
    expect(timeAtDrawn(timeline, 450)).toBeCloseTo(150, 9);
    expect(timeAtDrawn(timeline, 661)).toBeNull();
    expect(timeToReserve(timeline, 850)).toBeCloseTo(75, 9);
    expect(timeToReserve(timeline, 100)).toBeNull();
    expect(timeToReserve(timeline, 1000)).toBe(0);
    expect(timeToReserve(timeline, 2000)).toBe(0);
  });

  test('running dry half way through the cruise', () => {
    const timeline = flown(CIRCUIT, FLOW, 450);
    expect(timeline.dryAtS).toBeCloseTo(150, 9);
    expect(timeline.drawnMl).toBe(450);
    expect(drawnAt(timeline, 200)).toBe(450);
    expect(timeAtDrawn(timeline, 450)).toBeCloseTo(150, 9);
  });

  test('running dry just as the profile ends', () => {
    expect(flown(CIRCUIT, FLOW, 660).dryAtS).toBeCloseTo(210, 9);
  });

  test('flown again and again', () => {
    // Two rounds are 1320 ml; 130 ml more are the taxi and 70 ml of climb at 6 ml/s.
    expect(endurance(CIRCUIT, FLOW, 1450)).toBeCloseTo(420 + 60 + 70 / 6, 9);
    expect(endurance(CIRCUIT, FLOW, 1450, 130)).toBeCloseTo(420, 9);
    expect(endurance(CIRCUIT, FLOW, 1450, 1450)).toBe(0);
    expect(endurance([], FLOW, 100)).toBeNull();
  });
});

test('phases without flow, and no phases at all', () => {
  const still: Flow = { idleMlPerMin: 0, fullMlPerMin: 100 };
  const timeline = flown([{ name: 'glide', durationS: 300, throttlePct: 0 }, ...CIRCUIT], still, 500);
  expect(drawnAt(timeline, 300)).toBe(0);
  expect(timeAtDrawn(timeline, 0)).toBe(0);
  expect(flown([], still, 500)).toMatchObject({ totalS: 0, drawnMl: 0, dryAtS: null });
  expect(flown(CIRCUIT, still, 0)).toMatchObject({ dryAtS: 0, drawnMl: 0 });
  expect(endurance([{ name: 'glide', durationS: 300, throttlePct: 0 }], still, 500)).toBeNull();
});

const amount = between(0, 500);
const phases = fc.array(
  fc.record({
    name: fc.string(),
    durationS: amount,
    throttlePct: between(0, 100),
  }),
);
const flows = fc.record({ idleMlPerMin: amount, fullMlPerMin: amount });

test('what is drawn never falls, never exceeds what is usable, and time and amount undo each other', () => {
  fc.assert(
    fc.property(phases, flows, amount, fc.array(amount), (list, flow, usableMl, times) => {
      const timeline = flown(list, flow, usableMl);
      let before = 0;
      for (const s of times.toSorted((a, b) => a - b)) {
        const drawn = drawnAt(timeline, s);
        expect(drawn).toBeGreaterThanOrEqual(before - 1e-9);
        expect(drawn).toBeLessThanOrEqual(usableMl);
        before = drawn;
        const when = timeAtDrawn(timeline, drawn)!;
        expect(when).toBeLessThanOrEqual(s + 1e-9);
        expect(Math.abs(drawnAt(timeline, when) - drawn)).toBeLessThan(1e-9);
      }
    }),
  );
});

test.each([
  [
    [{ name: 'a', durationS: -1, throttlePct: 50 }],
    FLOW,
    10,
    /Phase 1 “a”, duration: expected 0 s or more, got -1/,
  ],
  [
    [{ name: 'a', durationS: 1, throttlePct: 101 }],
    FLOW,
    10,
    /Phase 1 “a”, throttle: expected 0 to 100 %, got 101/,
  ],
  [[], { idleMlPerMin: -1, fullMlPerMin: 5 }, 10, /Flow at idle/],
  [[], { idleMlPerMin: 1, fullMlPerMin: Number.NaN }, 10, /Flow at full throttle.*NaN/],
  [[], FLOW, Number.POSITIVE_INFINITY, /Usable fuel: expected 0 ml or more, got Infinity/],
])('refuses bad figures, case %#', (list, flow, usableMl, message) => {
  const result = burnTimeline(list, flow, usableMl);
  expect('faults' in result && result.faults.join('\n')).toMatch(message);
  expect(() => endurance(list, flow, usableMl)).toThrow(message);
});

describe('flow from a table', () => {
  const table: Flow = {
    idleMlPerMin: 60,
    fullMlPerMin: 360,
    table: [
      { throttlePct: 20, mlPerMin: 80 },
      { throttlePct: 60, mlPerMin: 140 },
    ],
  };

  test('by hand: straight lines between idle, the points and full throttle', () => {
    [0, 10, 20, 40, 60, 80, 100].forEach((throttle, k) => {
      expect(flowAt(table, throttle)).toBeCloseTo([60, 70, 80, 110, 140, 250, 360][k]!, 12);
    });
  });

  test('points on the straight line change nothing', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 1, max: 99 }), { maxLength: 6 }),
        between(0, 100),
        (throttles, throttlePct) => {
          const points = throttles
            .sort((a, b) => a - b)
            .map((at) => ({ throttlePct: at, mlPerMin: 60 + 3 * at }));
          expect(flowAt({ ...FLOW, table: points }, throttlePct)).toBeCloseTo(flowAt(FLOW, throttlePct), 9);
        },
      ),
    );
  });

  test('the burn draws by it: 120 s at half throttle, 125 ml/min', () => {
    const { drawnMl } = flown([{ name: 'cruise', durationS: 120, throttlePct: 50 }], table, 1000);
    expect(drawnMl).toBeCloseTo(250, 9);
  });

  test('throttles that fall, or stand at an end, give a sentence', () => {
    const wrong = burnTimeline([], { ...table, table: table.table!.toReversed() }, 100);
    expect(wrong).toMatchObject({ faults: [expect.stringContaining('point 2, throttle')] });
  });
});
