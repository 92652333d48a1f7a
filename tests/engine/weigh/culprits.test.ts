import { describe, expect, test } from 'vitest';
import {
  type CulpritKind,
  massPoint,
  propagate,
  rankCulprits,
  type Suspect,
  type WholeMeasurement,
} from '../../../src/engine';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { randomFrom } from '../../randomFrom';
import { gaussian } from './chance';

const extent = { minMm: [0, -1400, -250], maxMm: [2000, 1400, 350] } as const;

interface Placed {
  readonly id: string;
  readonly massG: number;
  readonly at: Vec3;
  readonly notWeighed: boolean;
}

const suspect = ({ id, massG, at, notWeighed }: Placed): Suspect => ({
  id,
  mass: massPoint(massG, at),
  sigmaG: notWeighed ? 0.05 * massG : 0.5,
  sigmaMm: [1, 1, 1],
  notWeighed,
  massTyped: !notWeighed,
  ...(notWeighed ? {} : { typedMm: at }),
});

/** A made-up aircraft: a structure nobody weighed in two pieces, and some twenty parts that were. */
function aircraft(random: () => number): Placed[] {
  const parts = Array.from(
    { length: 20 },
    (_, at): Placed => ({
      id: `part-${at}`,
      massG: Math.round(20 * 30 ** random()),
      at: [
        Math.round(1800 * random()),
        Math.round(600 * (random() - 0.5)),
        Math.round(120 * (random() - 0.5)),
      ],
      notWeighed: false,
    }),
  );
  return [
    { id: 'pod', massG: 700, at: [560, 0, 0], notWeighed: true },
    { id: 'tail', massG: 160, at: [1800, 0, 100], notWeighed: true },
    { id: 'wing', massG: 1700, at: [790, 0, 90], notWeighed: false },
    ...parts,
  ];
}

/** Weighs the truth on three good scales. */
function weighed(truth: readonly Placed[], random: () => number): WholeMeasurement {
  const { massG, cgMm } = propagate(truth.map(suspect))!.mass;
  const sigmas = [2, 0.6, 0.4];
  return {
    id: 'one',
    quantities: ['mass', 'station', 'buttline'],
    values: [massG, cgMm![0], cgMm![1]].map((value, at) => value + sigmas[at]! * gaussian(random)),
    covariance: sigmas.map((sigma, row) => sigmas.map((_, column) => (row === column ? sigma ** 2 : 0))),
  };
}

const slips: Readonly<Partial<Record<CulpritKind, (part: Placed) => Placed>>> = {
  mirrored: (part) => ({ ...part, at: [part.at[0], -part.at[1], part.at[2]] }),
  'mass-times-ten': (part) => ({ ...part, massG: part.massG / 10 }),
  'mass-unit': (part) => ({ ...part, massG: part.massG / 28.349523125 }),
  'place-times-ten': (part) => ({ ...part, at: [part.at[0] / 10, part.at[1], part.at[2]] }),
  'place-unit': (part) => ({ ...part, at: [part.at[0] / 25.4, part.at[1], part.at[2]] }),
  sign: (part) => ({ ...part, at: [-part.at[0], part.at[1], part.at[2]] }),
};

/** Moves of the CG that such a slip makes are worth finding from here on; lesser ones no scale sees, mm·g. */
const WORTH_GMM = 6000 * 6;

describe('the planted slip comes first', () => {
  for (const [kind, spoil] of Object.entries(slips)) {
    test(kind, () => {
      const random = randomFrom(kind.length * 97);
      let first = 0;
      const cases = 24;
      for (let trial = 0; trial < cases; ) {
        const truth = aircraft(random);
        const at = 3 + Math.floor(20 * random());
        const part = truth[at]!;
        const wrong = spoil(part);
        const moment = [0, 1].map((axis) => part.massG * part.at[axis]! - wrong.massG * wrong.at[axis]!);
        if (Math.hypot(...moment) < WORTH_GMM) continue;
        trial += 1;
        const listed = truth.with(at, wrong);
        const { culprits } = rankCulprits(listed.map(suspect), [weighed(truth, random)], extent);
        if (culprits[0]?.kind === kind && culprits[0].id === part.id) first += 1;
      }
      expect(first / cases).toBeGreaterThanOrEqual(0.8);
    });
  }

  test('not-weighed', () => {
    const random = randomFrom(7);
    let first = 0;
    for (let trial = 0; trial < 24; trial += 1) {
      const truth = aircraft(random);
      const at = trial % 2;
      const share = random() < 0.5 ? 0.6 : 1.5;
      const listed = truth.with(at, { ...truth[at]!, massG: truth[at]!.massG * share });
      const { culprits } = rankCulprits(listed.map(suspect), [weighed(truth, random)], extent);
      if (culprits[0]?.kind === 'not-weighed' && culprits[0].id === truth[at]!.id) first += 1;
    }
    expect(first / 24).toBeGreaterThanOrEqual(0.8);
  });

  test('forgotten, with its place found', () => {
    const random = randomFrom(8);
    const shelf = [58, 185, 345, 760].map((massG) => ({ id: `pack-${massG}`, massG, sigmaG: 0.03 * massG }));
    let first = 0;
    for (let trial = 0; trial < 24; trial += 1) {
      const listed = aircraft(random);
      const at: Vec3 = [1500 * random(), 100 * (random() - 0.5), 0];
      const truth = [...listed, { id: 'left-out', massG: 345 + 8 * gaussian(random), at, notWeighed: false }];
      const { culprits } = rankCulprits(listed.map(suspect), [weighed(truth, random)], extent, shelf);
      if (culprits[0]?.kind === 'forgotten' && culprits[0].id === 'pack-345') {
        first += 1;
        expect(Math.abs(culprits[0].positionMm[0] - at[0])).toBeLessThan(120);
      }
    }
    expect(first / 24).toBeGreaterThanOrEqual(0.8);
  });
});

test('two that say the same cannot be told apart, and it is said', () => {
  const random = randomFrom(9);
  const truth = aircraft(random);
  const twin: Placed = { id: 'left-twin', massG: 300, at: [600, 200, 0], notWeighed: false };
  const listed = [
    ...truth,
    { ...twin, at: [600, -200, 0] as Vec3 },
    { ...twin, id: 'other-twin', at: [700, -200, 0] as Vec3 },
  ];
  const really = [...truth, twin, { ...twin, id: 'other-twin', at: [700, -200, 0] as Vec3 }];
  const { alike, culprits } = rankCulprits(listed.map(suspect), [weighed(really, random)], extent);
  expect(culprits[0]?.kind).toBe('mirrored');
  expect(alike.map(({ id }) => id)).toEqual(expect.arrayContaining(['left-twin', 'other-twin']));
});

test('a difference that no single slip makes is left to something else', () => {
  const random = randomFrom(10);
  const listed = aircraft(random);
  const truth = [...listed, { id: 'sack', massG: 777, at: [1000, 0, 0] as Vec3, notWeighed: false }];
  const { somethingElse, culprits } = rankCulprits(listed.map(suspect), [weighed(truth, random)], extent);
  expect(somethingElse).toBeGreaterThan(culprits[0]?.probability ?? 0);
});
