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
import { hypotheses } from '../../../src/engine/weigh/culpritHypotheses';
import { thoughtOf } from '../../../src/engine/weigh/reconcile';
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

describe('what is thought of', () => {
  const box = { minMm: [-300, -800, -200], maxMm: [1700, 800, 200] } as const;
  const listed = (...placed: readonly Placed[]) => placed.map(suspect);
  const thoughtOfAll = (suspects: readonly Suspect[]) => hypotheses(suspects, thoughtOf(suspects), [], box);
  const truth: Placed = { id: 'pack', massG: 300, at: [500, 60, -40], notWeighed: false };
  const wing: Placed = { id: 'wing', massG: 1700, at: [790, 0, 90], notWeighed: false };
  const inch = 25.4;
  const ounce = 28.349523125;
  const [x, y, z] = truth.at;

  // Each slip by the one that it undoes: ten times too much and too little, inches for millimetres and the reverse.
  test.each<[CulpritKind, Partial<Placed>]>([
    ['mass-times-ten', { massG: 30 }],
    ['mass-times-ten', { massG: 3000 }],
    ['mass-unit', { massG: 300 / ounce }],
    ['mass-unit', { massG: 300 * ounce }],
    ['mirrored', { at: [x, -y, z] }],
    ['sign', { at: [-x, y, z] }],
    ['sign', { at: [x, y, -z] }],
    ['place-times-ten', { at: [x / 10, y, z] }],
    ['place-times-ten', { at: [x, y / 10, z] }],
    ['place-times-ten', { at: [x, y, z * 10] }],
    ['place-unit', { at: [x / inch, y, z] }],
    ['place-unit', { at: [x, y * inch, z] }],
    ['place-unit', { at: [x, y, z / inch] }],
    ['place-unit', { at: [x / inch, y / inch, z / inch] }],
    ['place-unit', { at: [x * inch, y * inch, z * inch] }],
  ])('%s %j: among all is the one that mends it, and it mends nothing else', (kind, spoilt) => {
    const all = thoughtOfAll(listed(wing, { ...truth, ...spoilt }));
    const mended = all.filter((each) => each.kind === kind && each.id === 'pack').map(({ things }) => things);
    const isTruth = (things: (typeof mended)[number]) => {
      const [same, pack] = [things.find(({ id }) => id === 'wing')!, things.find(({ id }) => id === 'pack')!];
      const off = Math.hypot(...pack.positionMm.map((at, axis) => at - truth.at[axis]!));
      return same.massG === 1700 && off < 1e-9 && Math.abs(pack.massG - 300) < 1e-9;
    };
    expect(mended.filter(isTruth)).toHaveLength(1);
  });

  const kindsOf = (suspects: readonly Suspect[]) =>
    thoughtOfAll(suspects)
      .filter(({ id }) => id === 'pack')
      .map(({ kind }) => kind);

  test('no slip of typing where nothing was typed', () => {
    expect(kindsOf(listed({ ...truth, notWeighed: true }))).toEqual(['not-weighed', 'not-aboard']);
  });

  test('not aboard is without mass and sure of it; not weighed is off by two fifths besides its own ±', () => {
    const all = thoughtOfAll(listed(truth));
    const of = (kind: CulpritKind) => all.find((each) => each.kind === kind)!.things[0]!;
    expect(of('not-aboard')).toMatchObject({ massG: 0, sigmaG: 0 });
    expect(of('not-weighed').sigmaG).toBeCloseTo(Math.hypot(0.5, 0.4 * 300), 12);
    // A mass that is put up keeps its ±; one that is put down takes it along.
    const [up, down] = all.filter(({ kind }) => kind === 'mass-times-ten').map(({ things }) => things[0]!);
    expect([up!.massG, up!.sigmaG]).toEqual([3000, 0.5]);
    expect([down!.massG, down!.sigmaG]).toEqual([30, expect.closeTo(0.05, 12)]);
    // A zero too many is as likely as one too few, an ounce for a gram as a gram for an ounce.
    for (const kind of ['mass-times-ten', 'mass-unit']) {
      const [first, second] = all.filter((each) => each.kind === kind).map(({ weight }) => weight);
      expect(first).toBe(second);
    }
    // A guessed mass is likelier wrong than a weighed one.
    const weightOf = (notWeighed: boolean) =>
      thoughtOfAll(listed({ ...truth, notWeighed })).find(({ kind }) => kind === 'not-weighed')!.weight;
    expect(weightOf(true)).toBeGreaterThan(weightOf(false));
  });

  test('what would change nothing, leave the aircraft, or stand in another’s place did not happen', () => {
    const onAxis = kindsOf(listed({ ...truth, at: [500, 0, 0] }));
    expect(onAxis).not.toContain('mirrored');
    expect(onAxis.filter((kind) => kind === 'sign')).toEqual([]);
    // Left of the middle by a fifth of a millimetre is in the middle: it would move by less than half of one.
    expect(kindsOf(listed({ ...truth, at: [500, 0.2, 0] }))).not.toContain('mirrored');
    expect(kindsOf(listed({ ...truth, at: [500, 0.3, 0] }))).toContain('mirrored');
    // Beyond the nose by more than 20 mm and a fiftieth of its length: 300 + 20 + 40.
    const turnedRound = (station: number) =>
      kindsOf(listed({ ...truth, at: [station, 60, 0] })).includes('sign');
    expect([turnedRound(359), turnedRound(361)]).toEqual([true, false]);
    const beside = (mm: number) =>
      kindsOf(listed(truth, { ...wing, at: [x, -y, z + mm] })).includes('mirrored');
    expect([beside(4.9), beside(5.1)]).toEqual([false, true]);
  });

  test('what was forgotten may be anywhere aboard, each as likely as the other', () => {
    const suspects = listed(truth);
    const shelf = [
      { id: 'small', massG: 58, sigmaG: 2 },
      { id: 'large', massG: 345, sigmaG: 9 },
    ];
    const all = hypotheses(suspects, thoughtOf(suspects), shelf, box);
    const left = all.filter(({ kind }) => kind === 'forgotten');
    expect(left.map(({ things }) => things[1])).toEqual([
      expect.objectContaining({ id: 'forgotten small', massG: 58, sigmaG: 2, positionMm: [700, 0, 0] }),
      expect.objectContaining({ id: 'forgotten large', massG: 345, sigmaG: 9, positionMm: [700, 0, 0] }),
    ]);
    // A flat chance over a length L has the sigma L/√12.
    expect(left[0]!.things[1]!.sigmaMm[0]).toBeCloseTo(2000 / Math.sqrt(12), 9);
    const alone = hypotheses(suspects, thoughtOf(suspects), shelf.slice(1), box);
    expect(alone.find(({ kind }) => kind === 'forgotten')!.weight).toBeCloseTo(2 * left[1]!.weight, 12);
  });
});

test('the odds move by how likely each list makes the figure: Bayes’ rule by hand', () => {
  const only: Suspect = {
    id: 'a',
    mass: massPoint(100, [0, 0, 0]),
    sigmaG: 1,
    sigmaMm: [0, 0, 0],
    notWeighed: true,
    massTyped: false,
  };
  const scaled = (value: number): WholeMeasurement => ({
    id: 'one',
    quantities: ['mass'],
    values: [value],
    covariance: [[4]],
  });
  const odds = (value: number) => {
    const { culprits, somethingElse } = rankCulprits([only], [scaled(value)], extent);
    const [culprit] = culprits;
    expect(culprits.map(({ kind }) => kind)).toEqual(['not-weighed']);
    expect(culprit!.probability + somethingElse).toBeCloseTo(1, 12);
    return culprit!.probability / somethingElse;
  };
  const normal = (off: number, variance: number) =>
    Math.exp(-0.5 * (off ** 2 / variance)) / Math.sqrt(variance);
  // Its mass off by 40 g of one sigma, or something else of up to a few per cent, 3 g, beside it.
  const ratio = (off: number) => normal(off, 1 + 40 ** 2 + 4) / normal(off, 1 + 3 ** 2 + 4);
  expect(odds(110) / odds(104)).toBeCloseTo(ratio(10) / ratio(4), 6);
  // If it was not weighed, it is what the scale says but for what the list still holds: 40² of 40² + 4 + 1.
  const { culprits } = rankCulprits([only], [scaled(110)], extent);
  expect(culprits[0]!.massG).toBeCloseTo(100 + (10 * 1601) / 1605, 6);
});

test('who was aboard is kept to: what was not cannot be it, and what was forgotten was aboard', () => {
  const pod = suspect({ id: 'pod', massG: 700, at: [560, 0, 0], notWeighed: true });
  const boom = suspect({ id: 'boom', massG: 700, at: [560, 0, 0], notWeighed: true });
  const heavier: WholeMeasurement = {
    id: 'one',
    quantities: ['mass'],
    values: [890],
    covariance: [[4]],
    aboard: new Set(['pod']),
  };
  const { culprits, somethingElse } = rankCulprits([pod, boom], [heavier], extent);
  expect(culprits.map(({ id }) => id)).toEqual(['pod']);
  expect(somethingElse).toBeLessThan(0.01);
  const shelf = [{ id: 'pack', massG: 190, sigmaG: 2 }];
  const better = rankCulprits([pod, boom], [heavier], extent, shelf).culprits[0]!;
  expect(better).toMatchObject({ kind: 'forgotten', id: 'pack' });
  expect(better.massG).toBeCloseTo(190, 0);
  // Nothing to hold against each other: nobody is named.
  expect(rankCulprits([], [heavier], extent)).toEqual({ culprits: [], alike: [], somethingElse: 1 });
});
