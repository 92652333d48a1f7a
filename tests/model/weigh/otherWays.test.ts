import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { balanceAt } from '../../../src/model/balance/balance';
import type { Aircraft, WeighIn } from '../../../src/model/document/types';
import { writeAircraft } from '../../../src/model/document/write';
import { readAircraft } from '../../../src/model/reading/read';
import { tiltToTake } from '../../../src/model/weigh/byTilt';
import {
  freshLines,
  freshScales,
  freshStand,
  freshSwing,
  freshTilt,
} from '../../../src/model/weigh/freshReadings';
import { heldAgainst } from '../../../src/model/weigh/heldAgainst';
import type { OfReading } from '../../../src/model/weigh/measured';
import { swungAgainst } from '../../../src/model/weigh/swung';
import { addWeighIn, lastOfCg, lastWeighIn } from '../../../src/model/weigh/weighIns';
import { axlesOf, wheelsOf } from '../../../src/model/weigh/wheels';
import { balanced, cgOf, demo, NAMES } from '../../demo/demoAircraft';

const entryOf = (reading: WeighIn['reading'], fuelPct = 0): WeighIn => ({
  id: 'test',
  date: '2026-06-01',
  tool: 'By hand',
  fuelPct,
  switches: [],
  notes: '',
  reading,
});

function ofKind<K extends WeighIn['reading']['by']>(reading: WeighIn['reading'], by: K): OfReading<K> {
  if (reading.by !== by) throw new Error(`not by ${by}`);
  return reading as OfReading<K>;
}

function held(aircraft: Aircraft, entry: WeighIn) {
  const answer = heldAgainst(aircraft, entry);
  if (!answer.ok) throw new Error(answer.sentence);
  return answer;
}

const sentence = (answer: { readonly ok: true } | { readonly ok: false; readonly sentence: string }) =>
  answer.ok ? 'an answer' : answer.sentence;

const rad = Math.PI / 180;
/** Earth-level distance aft of a point of an aircraft pitched nose up. */
const aft = ([x, , z]: Vec3, deg: number) => x * Math.cos(deg * rad) + z * Math.sin(deg * rad);

describe('tilted on one scale', () => {
  const aircraft = demo('sandmartin');

  /** Readings by plain statics of the whole, liquid run to where it lies with down turned by hand. */
  function tilted(fuelPct: number, degrees: readonly number[]): WeighIn {
    const fresh = ofKind(freshTilt(aircraft, fuelPct), 'tilt');
    const states = degrees.map((deg) =>
      balanceAt(aircraft, {
        fuelFraction: fuelPct / 100,
        down: [Math.sin(deg * rad), 0, -Math.cos(deg * rad)],
      }),
    );
    const readings = degrees.map((pitchDeg, at) => {
      const { massG, cgMm } = states[at]!;
      const lever = aft(cgMm!, pitchDeg) - aft(fresh.pivotMm, pitchDeg);
      const long = aft(fresh.otherMm, pitchDeg) - aft(fresh.pivotMm, pitchDeg);
      return { pitchDeg, grossG: 250 + (massG * lever) / long };
    });
    return entryOf({ ...fresh, massG: states[0]!.massG, tareG: 250, readings }, fuelPct);
  }

  test.each([0, 40, 100])('gives station and height back with %s %% of the fuel aboard', (fuelPct) => {
    const answer = held(aircraft, tilted(fuelPct, [0, -8, -15]));
    const dry = balanced(aircraft, fuelPct / 100).bodies;
    const massG = dry.reduce((sum, { mass }) => sum + mass.massG, 0);
    const along = (axis: 0 | 2) =>
      dry.reduce((sum, { mass }) => sum + mass.massG * (mass.cgMm?.[axis] ?? 0), 0) / massG;
    expect(answer.weighed.massG?.value).toBeCloseTo(massG, 6);
    expect(answer.weighed.stationMm.value).toBeCloseTo(along(0), 6);
    expect(answer.weighed.waterlineMm?.value).toBeCloseTo(along(2), 6);
    expect(answer.reconciled.agrees).toBe(true);
    expect(answer.reconciled.differences.map(({ quantity }) => quantity)).toEqual([
      'mass',
      'station',
      'waterline',
    ]);
  });

  test('the tilt to take keeps weight on the scale and is as good as any other within a tenth', () => {
    const reading = ofKind(freshTilt(aircraft, 0), 'tilt');
    const best = tiltToTake(aircraft, entryOf(reading), reading)!;
    const sigmaAt = (deg: number) => held(aircraft, tilted(0, [0, deg])).weighed.waterlineMm!.sigma;
    for (const deg of [-24, -20, -15, -10, 5, 8]) {
      expect(sigmaAt(best.pitchDeg)).toBeLessThan(1.12 * sigmaAt(deg));
    }
    const [, second] = reading.readings;
    expect(second?.pitchDeg).toBe(best.pitchDeg);
  });

  test.each([
    ['no mass', { massG: null }, /mass of the whole aircraft is needed/],
    ['one angle', { readings: [{ pitchDeg: 0, grossG: 900 }] }, /Two angles or more are needed, not 1/],
    [
      'an angle that was not read',
      {
        readings: [
          { pitchDeg: 0, grossG: 900 },
          { pitchDeg: -10, grossG: 0 },
        ],
      },
      /Reading 2: the scale has not been read yet/,
    ],
    [
      'the same angle twice',
      {
        readings: [
          { pitchDeg: 5, grossG: 900 },
          { pitchDeg: 5, grossG: 901 },
        ],
      },
      /too close together/,
    ],
    ['one axle for both', { otherMm: [842, 0, -240] as Vec3 }, /two axles are at one station/],
    ['a tare above the reading', { tareG: 5000 }, /Reading 1: .* is less than the tare, 5000 g/],
    [
      'more than the whole',
      {
        readings: [
          { pitchDeg: 0, grossG: 9000 },
          { pitchDeg: 9, grossG: 900 },
        ],
      },
      /Reading 1: 9000 g on one scale is more than the whole aircraft/,
    ],
    [
      'a pitch past the upright',
      {
        readings: [
          { pitchDeg: 0, grossG: 900 },
          { pitchDeg: 95, grossG: 900 },
        ],
      },
      /Reading 2: a pitch must be within ±60°, not 95°/,
    ],
  ])('%s is refused in a sentence', (_, change, words) => {
    const fresh = ofKind(freshTilt(aircraft, 0), 'tilt');
    const readings = [
      { pitchDeg: 0, grossG: 900 },
      { pitchDeg: -10, grossG: 1300 },
    ];
    const reading = { ...fresh, massG: 6845, readings, ...change };
    expect(sentence(heldAgainst(aircraft, entryOf(reading)))).toMatch(words);
  });
});

describe('lines that cross at the CG', () => {
  const aircraft = demo('fieldfare');
  const cg = cgOf(balanced(aircraft, 0));
  const line = (name: string, [dx, dy, dz]: Vec3) => ({
    name,
    throughMm: [cg[0] - dx, cg[1] - dy, cg[2] - dz] as const,
    andMm: [cg[0] + 2 * dx, cg[1] + 2 * dy, cg[2] + 2 * dz] as const,
  });

  test.each([
    ['side', [line('nose', [200, 0, 30]), line('tail', [5, 0, 90])], 'waterlineMm', 2],
    ['top', [line('right', [40, 300, 0]), line('left', [-35, 300, 0])], 'buttlineMm', 1],
  ] as const)('seen from the %s', (view, lines, key, axis) => {
    const fresh = ofKind(freshLines(aircraft, 0), 'lines');
    const { weighed, reconciled } = held(aircraft, entryOf({ ...fresh, view, lines: [...lines] }));
    expect(weighed.stationMm.value).toBeCloseTo(cg[0], 6);
    expect(weighed[key]?.value).toBeCloseTo(cg[axis], 6);
    expect(weighed[key === 'waterlineMm' ? 'buttlineMm' : 'waterlineMm']).toBeNull();
    expect(reconciled.agrees).toBe(true);
  });

  test('lines that nobody measured say so', () => {
    expect(sentence(heldAgainst(aircraft, entryOf(freshLines(aircraft, 0))))).toMatch(
      /Line 1: expected two points apart/,
    );
  });
});

describe('hung by nose and tail', () => {
  const aircraft = demo('sandmartin');
  const { massG, cgMm } = balanced(aircraft, 0);
  const stand = { ...ofKind(freshStand(aircraft, 0), 'stand'), supportMm: cgMm![0], massG };

  test('grams on the light wing give the offset: m·a = W·y', () => {
    const addedAtMm = -900;
    const addedG = (massG * cgMm![1]) / -addedAtMm;
    const { weighed, reconciled } = held(
      aircraft,
      entryOf({ ...stand, across: { addedG, plusMinusG: 1, addedAtMm } }),
    );
    expect(weighed.buttlineMm?.value).toBeCloseTo(cgMm![1], 9);
    expect(reconciled.agrees).toBe(true);
  });

  test('level by itself it is as sure as the grams that make no difference, and where it hung', () => {
    const { weighed } = held(
      aircraft,
      entryOf({ ...stand, plusMinusMm: 1, across: { addedG: 0, plusMinusG: 4, addedAtMm: 1000 } }),
    );
    expect(weighed.buttlineMm?.value).toBeCloseTo(0, 12);
    expect(weighed.buttlineMm?.sigma).toBeCloseTo(Math.hypot(0.5, (2 * 1000) / massG), 3);
  });

  test.each([
    ['grams in the middle', { across: { addedG: 5, plusMinusG: 1, addedAtMm: 0 } }, /lie to one side/],
    [
      'no mass of the whole',
      { massG: null, across: { addedG: 5, plusMinusG: 1, addedAtMm: 900 } },
      /Across: the mass of the whole aircraft is needed/,
    ],
    ['supports that nobody measured', { supportMm: null }, /expected where they stood/],
    ['a whole of 0 g', { massG: 0 }, /The whole, weighed: expected more than 0 g/],
  ])('%s', (_, change, words) => {
    expect(sentence(heldAgainst(aircraft, entryOf({ ...stand, ...change })))).toMatch(words);
  });
});

describe('swung', () => {
  const aircraft = demo('sandmartin');
  const { massG, inertiaAboutCgGmm2 } = balanced(aircraft, 0);
  const g = 9806.65;
  const fresh = {
    ...ofKind(freshSwing(aircraft, 0), 'swing'),
    massG,
    apartMm: 500,
    threadMm: 1500,
    amplitudeDeg: 0,
  };
  const ofAxis = { roll: 'xx', pitch: 'yy', yaw: 'zz' } as const;
  const runs = (periodS: number) => [1, 2, 3].map(() => ({ swings: 20, timeS: 20 * periodS }));

  test.each(['roll', 'pitch', 'yaw'] as const)('comes back in %s, three ways hung', (axis) => {
    const inertia = inertiaAboutCgGmm2[ofAxis[axis]];
    // Textbook periods: 4π√(I·h/(m·g·D²)), 2π√(I·h/(m·g·r²)), 2π√((I + m·l²)/(m·g·l)).
    const periods = {
      bifilar: 4 * Math.PI * Math.sqrt((inertia * 1500) / (massG * g * 500 ** 2)),
      trifilar: 2 * Math.PI * Math.sqrt((inertia * 1500) / (massG * g * 500 ** 2)),
      compound: 2 * Math.PI * Math.sqrt((inertia + massG * 500 ** 2) / (massG * g * 500)),
    };
    for (const how of ['bifilar', 'trifilar', 'compound'] as const) {
      const swung = swungAgainst(aircraft, entryOf({ ...fresh, axis, how, runs: runs(periods[how]) }));
      if (!swung.ok) throw new Error(swung.sentence);
      expect(swung.swung.value / inertia).toBeCloseTo(1, 9);
      expect(swung.listed.value).toBeCloseTo(inertia, 3);
      expect(swung.agrees).toBe(true);
      const off = swungAgainst(aircraft, entryOf({ ...fresh, axis, how, runs: runs(1.3 * periods[how]) }));
      expect(off.ok && off.agrees).toBe(false);
    }
  });

  test('the air that swings along is offered, and taken off when asked for', () => {
    const reading = { ...fresh, axis: 'roll', how: 'bifilar', runs: runs(3) } as const;
    const [as, less] = [false, true].map((lessAir) =>
      swungAgainst(aircraft, entryOf({ ...reading, lessAir })),
    );
    if (!as?.ok || !less?.ok) throw new Error('no answer');
    expect(as.air.value).toBeGreaterThan(0);
    expect(less.swung.value).toBeCloseTo(as.swung.value - as.air.value, 3);
    expect(less.swung.sigma).toBeGreaterThan(as.swung.sigma);
  });

  test.each([
    ['no mass', { massG: null }, /mass of the whole aircraft is needed/],
    ['no run', { runs: [] }, /Time one run at least/],
    ['a period of 0', { runs: [{ swings: 10, timeS: 0 }] }, /Run 1: expected one swing or more and a time/],
    ['threads without length', { threadMm: 0 }, /Length of the threads: expected more than 0, got 0/],
    ['threads at one place', { apartMm: 0 }, /Spacing of the threads: expected more than 0, got 0/],
    ['a wild swing', { amplitudeDeg: 80 }, /0° to 45° to each side, not 80°/],
    [
      'a plate never swung',
      { how: 'trifilar', plate: { massG: 300, periodS: 0 } },
      /Period of the plate alone/,
    ],
    ['an arm too long for its period', { how: 'compound', apartMm: 5000 }, /leave no inertia/],
  ] as const)('%s is refused in a sentence', (_, change, words) => {
    const reading = { ...fresh, runs: runs(2), ...change } as OfReading<'swing'>;
    expect(sentence(swungAgainst(aircraft, entryOf(reading)))).toMatch(words);
  });

  test('is kept in the log but is not the weigh-in that the verdict names', () => {
    const swung = { ...entryOf({ ...fresh, runs: runs(2) }), date: '2027-01-01' };
    const { aircraft: logged, id } = addWeighIn(aircraft, swung);
    expect(lastWeighIn(logged)?.id).toBe(id);
    expect(lastOfCg(logged)?.id).toBe(lastWeighIn(aircraft)?.id);
    expect(sentence(heldAgainst(logged, swung))).toMatch(/says nothing about where the CG is/);
  });
});

test('every way to weigh starts unfinished on every demo, says what is missing, and is kept in the file', () => {
  for (const name of NAMES) {
    const aircraft = demo(name);
    const fresh = [freshScales, freshStand, freshLines, freshTilt, freshSwing].map((start) =>
      start(aircraft, 50),
    );
    for (const reading of fresh) {
      const entry = entryOf(reading, 50);
      const answer = reading.by === 'swing' ? swungAgainst(aircraft, entry) : heldAgainst(aircraft, entry);
      expect(sentence(answer)).toMatch(/read|needed|expected|Time/);
      const { aircraft: logged } = addWeighIn(aircraft, entry);
      const back = readAircraft(JSON.parse(writeAircraft(logged)));
      expect(back.ok && writeAircraft(back.aircraft)).toBe(writeAircraft(logged));
    }
  }
});

test('it is tilted about the axle with a pair of wheels, or else about the largest wheel', () => {
  for (const name of NAMES) {
    const aircraft = demo(name);
    const wheels = wheelsOf(aircraft);
    const axles = axlesOf(aircraft);
    if (new Set(wheels.map(({ axleMm }) => axleMm[0])).size < 2) {
      expect(axles).toBeNull();
      continue;
    }
    const atMain = wheels.filter(({ axleMm }) => axleMm[0] === axles?.mainMm[0]);
    const largest = Math.max(...wheels.map(({ radiusMm }) => radiusMm));
    expect(atMain.length === 2 || atMain[0]?.radiusMm === largest).toBe(true);
    expect(axles?.otherMm[0]).not.toBe(axles?.mainMm[0]);
  }
});

test('a scale that was left unread is named', () => {
  const aircraft = demo('sandmartin');
  const fresh = ofKind(freshScales(aircraft), 'scales');
  const scales = fresh.scales.map((scale, at) => ({ ...scale, grossG: at === 0 ? 0 : 3000 }));
  expect(sentence(heldAgainst(aircraft, entryOf({ ...fresh, scales })))).toMatch(
    /^Nose leg: its scale has not been read yet/,
  );
});

test('pitched on its wheels with fuel aboard, the fuel is where it runs to', () => {
  const aircraft = demo('sandmartin');
  const pitchDeg = 9;
  const fresh = ofKind(freshScales(aircraft), 'scales');
  const { massG, cgMm } = balanceAt(aircraft, {
    fuelFraction: 0.5,
    down: [Math.sin(pitchDeg * rad), 0, -Math.cos(pitchDeg * rad)],
  });
  // Nose and mains by moments about the mains' axle; left and right by the buttline.
  const [nose, left] = wheelsOf(aircraft).map(({ axleMm }) => axleMm);
  const mains = aft(left!, pitchDeg);
  const noseG = (massG * (mains - aft(cgMm!, pitchDeg))) / (mains - aft(nose!, pitchDeg));
  const rightG = ((massG * cgMm![1]) / Math.abs(left![1]) + (massG - noseG)) / 2;
  const loads = [noseG, massG - noseG - rightG, rightG];
  const scales = fresh.scales.map((scale, at) => ({ ...scale, grossG: loads[at]! }));
  const answer = held(aircraft, entryOf({ ...fresh, scales, pitchDeg, pitchPlusMinusDeg: 0 }, 50));
  expect(answer.weighed.stationMm.value).toBeCloseTo(cgMm![0], 6);
  expect(answer.weighed.buttlineMm?.value).toBeCloseTo(cgMm![1], 6);
  expect(answer.stationOffMm).toBeCloseTo(0, 6);
});
