import { describe, expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../src/model/balance/balance';
import { blankAircraft } from '../../src/model/document/blank';
import type { Aircraft } from '../../src/model/document/types';
import { writeAircraft } from '../../src/model/document/write';
import { parseAircraft } from '../../src/model/reading/read';

/**
 * Published loading tables, run through the file format: written out as a document, read back, balanced.
 * A table's unit of weight stands for the gram and its inch for the millimetre; the arithmetic is the same.
 */

interface Row {
  readonly name: string;
  readonly weight: number;
  readonly arm: number;
  readonly buttline?: number;
}

const slug = (name: string, i: number) => `${name.toLowerCase().replace(/[^a-z0-9]+/g, '-')}-${i}`;

function documentOf(
  rows: readonly Row[],
  fuel?: { readonly weight: number; readonly arm: number },
): Aircraft {
  const blank = blankAircraft();
  return {
    ...blank,
    structure: [],
    parts: rows.map(({ name, weight, arm, buttline = 0 }, i) => ({
      id: slug(name, i),
      name,
      role: 'other' as const,
      shape: { kind: 'sphere' as const, diameterMm: 1 },
      massG: weight,
      positionMm: [arm, buttline, 0] as const,
      yawDeg: 0,
      pitchDeg: 0,
      rollDeg: 0,
    })),
    fuel: fuel
      ? {
          kind: 'other' as const,
          name: 'Fuel',
          densityGPerMl: 0.8,
          use: 'burn' as const,
          share: 'volume' as const,
          flow: { idleMlPerMin: 1, fullMlPerMin: 10 },
          profile: { name: 'Steady', phases: [] },
          reservePct: 0,
        }
      : null,
    tanks: fuel
      ? [
          {
            id: 'tank',
            name: 'Tank',
            // A cube that the fuel just fills: edge³ mm³ = 1000 · ml.
            shape: {
              kind: 'box' as const,
              lengthMm: Math.cbrt((fuel.weight / 0.8) * 1000),
              widthMm: Math.cbrt((fuel.weight / 0.8) * 1000),
              heightMm: Math.cbrt((fuel.weight / 0.8) * 1000),
            },
            positionMm: [fuel.arm, 0, 0] as const,
            yawDeg: 0,
            pitchDeg: 0,
            rollDeg: 0,
            emptyMassG: 0,
            startMl: null,
            unusableMl: 0,
            feeds: 'outlet',
            rank: 1,
          },
        ]
      : [],
  };
}

function balanced(
  rows: readonly Row[],
  fuel?: { readonly weight: number; readonly arm: number },
  fuelFraction = 1,
) {
  const read = parseAircraft(writeAircraft(documentOf(rows, fuel)));
  if (!read.ok) throw new Error(read.faults.map((fault) => fault.sentence).join('\n'));
  return balanceAt(read.aircraft, { fuelFraction, down: LEVEL });
}

const row = (name: string, weight: number, arm: number, buttline = 0): Row => ({
  name,
  weight,
  arm,
  buttline,
});

describe('FAA Pilot’s Handbook of Aeronautical Knowledge, loading table (arms from memory)', () => {
  const rows = [
    row('Empty', 2100, 78.3),
    row('Front', 340, 85),
    row('Rear', 350, 121),
    row('Baggage', 80, 150),
  ];

  test('full: 3320 lb, 84.8 in', () => {
    const { massG, cgMm } = balanced(rows, { weight: 450, arm: 75 });
    expect(Math.abs(massG - 3320)).toBeLessThan(1e-6);
    expect(Math.abs((cgMm?.[0] ?? 0) - 84.8)).toBeLessThanOrEqual(0.05);
  });

  test('the travel runs from the full table to the table without its fuel row', () => {
    const { travel } = balanced(rows, { weight: 450, arm: 75 }, 0);
    const dry = (2100 * 78.3 + 340 * 85 + 350 * 121 + 80 * 150) / 2870;
    expect(travel.at(-1)?.cgMm[0]).toBeCloseTo(dry, 9);
    expect(travel[0]?.fuelFraction).toBe(1);
    expect(Math.abs((travel[0]?.cgMm[0] ?? 0) - 84.8)).toBeLessThanOrEqual(0.05);
  });
});

describe('FAA AC 43.13-1B', () => {
  test('fig. 10-10, most forward loading: 1439 lb, +11.2 in', () => {
    const { massG, cgMm } = balanced([row('Empty', 1169, 10.6), row('Oil', 17, -49), row('Pilot', 170, 16)], {
      weight: 83,
      arm: 22,
    });
    expect(massG).toBeCloseTo(1439, 6);
    expect(Math.abs((cgMm?.[0] ?? 0) - 11.2)).toBeLessThanOrEqual(0.05);
  });

  test('fig. 10-13: 2100 lb; the printed +18.6 is a misprint of 38 466 / 2100 = 18.317', () => {
    const { massG, cgMm } = balanced(
      [
        row('Empty', 1169, 10.6),
        row('Oil', 17, -49),
        row('Pilot', 170, 16),
        row('Front', 170, 16),
        row('Rear', 340, 48),
      ],
      { weight: 234, arm: 22 },
    );
    expect(massG).toBeCloseTo(2100, 6);
    // The figure rounds 1169 × 10.6 to 12 391, which is worth 0.0003 in.
    expect(Math.abs((cgMm?.[0] ?? 0) - 38466 / 2100)).toBeLessThan(0.0005);
  });
});

describe('SFTE Flight Test Engineering Reference Handbook (2013), §7.2', () => {
  test('loading: 1335 lb, 84.16 in (prints are truncated)', () => {
    const { massG, cgMm } = balanced(
      [row('Empty', 1075, 84), row('Pilot', 170, 85.5), row('Oil', 15, 31.7)],
      { weight: 75, arm: 94 },
    );
    expect(massG).toBeCloseTo(1335, 6);
    expect(Math.abs((cgMm?.[0] ?? 0) - 84.16)).toBeLessThan(0.01);
  });

  test('weighing, lengthwise and lateral: 1946 lb, 12.33 in ahead of the mains, 0.216 in right', () => {
    const { massG, cgMm } = balanced([
      row('Nose', 320, -75),
      row('Right main', 816, 0, 70),
      row('Left main', 810, 0, -70),
    ]);
    expect(massG).toBe(1946);
    expect(Math.abs((cgMm?.[0] ?? 0) + 12.33)).toBeLessThanOrEqual(0.005);
    expect(Math.abs((cgMm?.[1] ?? 0) - 0.216)).toBeLessThanOrEqual(0.0005);
  });
});

test('FAA-H-8083-1B ch. 2 lever (from memory): 100 lb @ 50, 100 @ 90, 200 @ 150 balance at 110', () => {
  const { cgMm } = balanced([row('A', 100, 50), row('B', 100, 90), row('C', 200, 150)]);
  expect(cgMm?.[0]).toBeCloseTo(110, 9);
});

test('PHAK weight shift: 8000 lb at 77.0 in, 100 lb from 30 to 150 in gives 78.5 in', () => {
  const rest = row('Rest', 7900, (616_000 - 3000) / 7900);
  expect(balanced([rest, row('Box', 100, 30)]).cgMm?.[0]).toBeCloseTo(77, 9);
  expect(balanced([rest, row('Box', 100, 150)]).cgMm?.[0]).toBeCloseTo(78.5, 9);
});

test('FAA private-pilot question bank 3664: 1495.0 @ 101.4, 380 @ 64, 30 gal × 6 lb @ 96 gives 94.01 (answer from memory)', () => {
  const { cgMm } = balanced([row('Empty', 1495, 101.4), row('People', 380, 64)], { weight: 180, arm: 96 });
  expect(Math.abs((cgMm?.[0] ?? 0) - 94.01)).toBeLessThanOrEqual(0.005);
});
