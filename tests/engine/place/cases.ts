import type { Vec3 } from '../../../src/engine/geometry/types';
import type { Lead, MovablePart, PlaceOption, PlaceProblem } from '../../../src/engine/place/types';

/** Random numbers in 0…1 from a seed (mulberry32). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export const option = (
  id: string,
  minMm: Vec3,
  maxMm: Vec3,
  sizeMm: Vec3,
  cg: Vec3 = [0, 0, 0],
): PlaceOption => ({
  id,
  name: id,
  region: { minMm, maxMm },
  sizeMm,
  cgFromCentreMm: cg,
});

export interface Bay {
  readonly fromMm: number;
  readonly toMm: number;
  readonly buttlineMm: number;
}

interface LineCase {
  readonly parts: number;
  readonly bays: number;
  /** How far the band lies ahead of what is easy, mm: the farther, the more ballast. */
  readonly hard: number;
  readonly states?: number;
}

/**
 * Bays one behind another, two of them at the sides when there are four, each so narrow that parts stand in line. The
 * band is put `hard` mm ahead of the CG with all parts packed as far forward as a first guess does, so that ballast in
 * the nose is really needed.
 */
export function lineCase(
  seed: number,
  { parts: count, bays: bayCount, hard, states = 4 }: LineCase,
): PlaceProblem {
  const random = seeded(seed);
  const between = (low: number, high: number) => low + (high - low) * random();
  const whole = (low: number, high: number) => Math.floor(between(low, high + 1));
  const parts = Array.from({ length: count }, (_, i) => ({
    id: `p${i}`,
    massG: whole(20, 400),
    sizeMm: [whole(25, 90), 50, 40] as Vec3,
  }));
  const totalMm = parts.reduce((sum, { sizeMm }) => sum + sizeMm[0], 0);
  let at = 80;
  const bays: Bay[] = Array.from({ length: bayCount }, (_, b) => {
    const lengthMm = Math.round((totalMm / bayCount) * between(1.15, 1.6)) + 60;
    const side = bayCount >= 4 && b >= 2 ? (b === 2 ? -1 : 1) * 140 : 0;
    const bay = { fromMm: at, toMm: at + lengthMm, buttlineMm: side };
    if (!(bayCount >= 4 && b === 2)) at += lengthMm + whole(15, 60);
    return bay;
  });
  const movable = parts.map(({ id, massG, sizeMm }): MovablePart => {
    const allowed = bays.filter(() => random() < 0.8);
    const options = (allowed.length > 0 ? allowed : bays).map((bay) =>
      option(
        `bay${bays.indexOf(bay)}`,
        [bay.fromMm, bay.buttlineMm - 25, -20],
        [bay.toMm, bay.buttlineMm + 25, 20],
        sizeMm,
      ),
    );
    return {
      id,
      name: id,
      massesG: Array(states).fill(massG),
      options,
      present: { centreMm: [0, 0, 0], optionId: null },
    };
  });
  const emptyG = whole(1500, 3500);
  const emptyMm = between(at * 0.5, at * 0.6);
  const cases = Array.from({ length: states }, (_, s) => {
    const fuelG = (s * 300) / states;
    return {
      id: `s${s}`,
      name: `state ${s}`,
      massG: emptyG + fuelG,
      momentGmm: [emptyG * emptyMm + fuelG * (emptyMm - 25), emptyG * between(-1, 1) * 0.5, 0] as Vec3,
    };
  });
  // The guess: the densest for their length first, each in the foremost of its bays with room left.
  const usedMm = bays.map(() => 0);
  const guessed = parts.map(() => 0);
  const order = parts
    .map((_, i) => i)
    .sort((a, b) => parts[b]!.massG / parts[b]!.sizeMm[0] - parts[a]!.massG / parts[a]!.sizeMm[0]);
  for (const i of order) {
    const length = parts[i]!.sizeMm[0] + 2;
    const bayOf = ({ id }: PlaceOption) => Number(id.slice(3));
    const open = movable[i]!.options.map(bayOf).filter(
      (b) => usedMm[b]! + length <= bays[b]!.toMm - bays[b]!.fromMm + 2,
    );
    const b = open[0] ?? bayOf(movable[i]!.options[0]!);
    guessed[i] = bays[b]!.fromMm + usedMm[b]! + length / 2 - 1;
    usedMm[b]! += length;
  }
  const massG = cases[0]!.massG + parts.reduce((sum, part) => sum + part.massG, 0);
  const guessMm =
    (cases[0]!.momentGmm[0] + parts.reduce((sum, part, i) => sum + part.massG * guessed[i]!, 0)) / massG;
  return {
    cases,
    band: { forwardMm: guessMm - hard - 14, aftMm: guessMm - hard },
    lateralMm: 6,
    parts: movable,
    obstacles: [],
    spots: [
      { id: 'nose', name: 'nose', positionMm: [20, 0, 0], stepG: 1, mostG: 600 },
      { id: 'tail', name: 'tail', positionMm: [at + 300, 0, 0], stepG: 1, mostG: 300 },
      { id: 'left-tip', name: 'left tip', positionMm: [at * 0.5, -900, 0], stepG: 1, mostG: 100 },
      { id: 'right-tip', name: 'right tip', positionMm: [at * 0.5, 900, 0], stepG: 1, mostG: 100 },
    ],
    clearanceMm: 2,
    apart: [],
    leads: [],
  };
}

/**
 * Parts with a few single places each, some of which overlap, with walls, rules, a lead, a part that is not aboard in all
 * load cases, and boxes turned two ways: small enough to try everything.
 */
export function pointCase(seed: number): PlaceProblem {
  const random = seeded(seed * 7919 + 1);
  const whole = (low: number, high: number) => Math.floor(low + (high - low + 1) * random());
  const states = whole(1, 3);
  const count = whole(2, 4);
  const parts = Array.from({ length: count }, (_, i): MovablePart => {
    const size: Vec3 = [whole(2, 4) * 20, whole(1, 3) * 20, whole(1, 2) * 20];
    const massG = whole(30, 300);
    const droppable = random() < 0.25;
    const options = Array.from({ length: whole(2, 4) }, (_, k) => {
      const turned = random() < 0.3;
      const sizeMm: Vec3 = turned ? [size[1], size[0], size[2]] : size;
      const at: Vec3 = [whole(0, 10) * 20, whole(-2, 2) * 20, whole(0, 1) * 20];
      const far: Vec3 = [at[0] + sizeMm[0], at[1] + sizeMm[1], at[2] + sizeMm[2]];
      return option(`p${i}-${k}`, at, far, sizeMm, [whole(-5, 5), whole(-3, 3), 0]);
    });
    const now = options[whole(0, options.length - 1)]!;
    const { minMm, maxMm } = now.region;
    return {
      id: `p${i}`,
      name: `part ${i}`,
      massesG: Array.from({ length: states }, (_, s) => (droppable && s > 0 ? 0 : massG)),
      options,
      present: {
        optionId: now.id,
        centreMm: [(minMm[0] + maxMm[0]) / 2, (minMm[1] + maxMm[1]) / 2, (minMm[2] + maxMm[2]) / 2],
      },
    };
  });
  const middle = 60 + 80 * random();
  const width = 6 + 14 * random();
  return {
    cases: Array.from({ length: states }, (_, s) => {
      const massG = whole(600, 900) + 60 * s;
      return {
        id: `s${s}`,
        name: `state ${s}`,
        massG,
        momentGmm: [massG * (90 + 20 * random()), massG * 8 * (random() - 0.5), 0],
      };
    }),
    band: { forwardMm: middle - width, aftMm: middle + width },
    lateralMm: random() < 0.7 ? 4 + 8 * random() : null,
    parts,
    obstacles:
      random() < 0.5 ? [{ id: 'wall', name: 'wall', minMm: [100, -60, 0], maxMm: [110, 0, 40] }] : [],
    spots: [
      { id: 'nose', name: 'nose', positionMm: [-100, 0, 0], stepG: 5, mostG: 120 },
      { id: 'tip', name: 'tip', positionMm: [120, random() < 0.5 ? 300 : -300, 0], stepG: 10, mostG: 60 },
    ],
    clearanceMm: 0,
    apart: random() < 0.4 ? [{ id: 'rule', a: 'p0', b: 'p1', gapMm: 25 }] : [],
    leads:
      random() < 0.4 ? [{ id: 'lead', name: 'lead', from: 'p0', to: 'p1', lengthMm: whole(6, 12) * 20 }] : [],
  };
}

/**
 * The same with what an aircraft really has: leads that weigh and bend by waypoints, that must reach in a straight line and
 * leave a turned part elsewhere, rules in a straight line, and stacks of ballast with a size, kept out of a zone.
 */
export function wiredCase(seed: number): PlaceProblem {
  const drawn = pointCase(seed);
  const random = seeded(seed * 104_729 + 3);
  const whole = (low: number, high: number) => Math.floor(low + (high - low + 1) * random());
  const aboard = drawn.cases.map((_, s) => s === 0 || random() < 0.7);
  const bent = random() < 0.6;
  const lead = (id: string, from: string, to: string | Vec3): Lead => {
    const toMeasure = random() < 0.3;
    return {
      id,
      name: id,
      from,
      to,
      by: 'straight',
      lengthMm: toMeasure ? Number.POSITIVE_INFINITY : whole(8, 18) * 20,
      waypointsMm: bent ? [[whole(0, 10) * 20, whole(-2, 2) * 20, 30]] : [],
      mass: { massG: toMeasure ? 0 : whole(4, 40), gPerMm: toMeasure ? 0.02 + 0.08 * random() : 0, aboard },
    };
  };
  const parts = drawn.parts.map((part) => ({
    ...part,
    options: part.options.map((option, k) =>
      k % 2 === 0 ? option : { ...option, leadEndsMm: { loom: [whole(-15, 15), whole(-8, 8), 0] as Vec3 } },
    ),
  }));
  const [nose, tip] = drawn.spots;
  const stack = { lengthMm: whole(20, 60), widthMm: 20, heightMm: 20, densityGPerMm3: 0.0113 };
  return {
    ...drawn,
    parts,
    clearanceMm: random() < 0.5 ? 2 : 0,
    leads: [lead('loom', 'p0', 'p1'), lead('pump', parts.at(-1)!.id, [200, 30, 10])].slice(0, whole(1, 2)),
    apart:
      random() < 0.5 ? [{ id: 'rule', a: 'p0', b: 'p1', gapMm: whole(15, 60), by: 'straight' }] : drawn.apart,
    spots: [
      { ...nose!, positionMm: [whole(-1, 4) * 20, whole(-1, 1) * 30, 10], body: stack },
      random() < 0.5 ? { ...tip!, body: { ...stack, lengthMm: 80 } } : tip!,
    ],
    noBallast:
      random() < 0.4 ? [{ id: 'hot', name: 'hot pipe', minMm: [30, -60, 0], maxMm: [60, 60, 60] }] : [],
  };
}
