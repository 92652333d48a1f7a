import { seededRandom } from '../../../src/engine/fit/random';
import type { Aircraft, Fuselage, Part } from '../../../src/model/document/types';
import type { StabilityEstimate } from '../../../src/model/stability/stability';
import { aircraftOf, boxPart } from '../aircraft';
import { estimateAt } from '../judgement/estimate';

/** A hull 900 mm long, round at both ends, 120 mm wide and high between. */
export const HULL: Fuselage = {
  id: 'hull',
  kind: 'fuselage',
  name: 'Hull',
  sides: 'centre',
  buttlineMm: 0,
  sections: [
    [0, 60],
    [100, 120],
    [800, 120],
    [900, 60],
  ].map(([stationMm, sizeMm]) => ({
    stationMm: stationMm!,
    widthMm: sizeMm!,
    heightMm: sizeMm!,
    waterlineMm: 0,
    roundness: 0.3,
  })),
  skinMm: 2,
  mass: { by: 'weighed', massG: 400 },
};

/** An aircraft to be advised on, and the neutral point that is thought to be its. */
export interface Case {
  readonly aircraft: Aircraft;
  readonly estimate: StabilityEstimate | null;
}

const ROLES = ['energy', 'payload', 'radio', 'other', 'control'] as const;

/** An aircraft of boxes in a hull, somewhere about its band: packs in pairs, ballast, switches, all by chance. */
export function randomCase(seed: number): Case {
  const random = seededRandom(seed);
  const between = (from: number, to: number) => from + (to - from) * random();
  const maybe = (chance: number) => random() < chance;
  const box = (id: string, massG: number, x: number, y: number, z: number): Part => ({
    ...boxPart(id, Math.round(massG), [Math.round(x * 10) / 10, Math.round(y), Math.round(z)]),
    shape: {
      kind: 'box',
      lengthMm: Math.round(between(20, 90)),
      widthMm: Math.round(between(15, 40)),
      heightMm: Math.round(between(12, 36)),
    },
  });
  const engine = { ...box('engine', between(500, 1500), between(300, 600), 0, 30), locked: true } as Part;
  const loose = Array.from({ length: 2 + Math.floor(between(0, 5)) }, (_, k): Part => {
    const part = box(`part ${k}`, between(20, 500), between(90, 810), between(-30, 30), between(-30, 20));
    const role = ROLES[Math.floor(between(0, ROLES.length))]!;
    return { ...part, id: `part-${k}`, role, ...(maybe(0.2) && { locked: true }) };
  });
  const pair = maybe(0.4) ? pairOf(box('pair', between(60, 300), between(120, 760), 38, -10)) : [];
  const lead: Part[] = maybe(0.5)
    ? [
        {
          ...boxPart('lead', Math.round(between(10, 400)), [maybe(0.5) ? 40 : 850, 0, 0]),
          role: 'ballast',
          shape: { kind: 'box', lengthMm: 20, widthMm: 20, heightMm: 20 },
        },
      ]
    : [];
  const whole = aircraftOf([HULL], [engine, ...loose, ...pair, ...lead]);
  const massG = whole.parts.reduce((sum, part) => sum + part.massG, 0);
  const cgMm = whole.parts.reduce((sum, part) => sum + (part.massG * part.positionMm[0]) / massG, 0);
  const forwardMm = Math.round(cgMm + between(-30, 15));
  const aftMm = forwardMm + Math.round(between(8, 40));
  const dropped = maybe(0.4) ? loose[0] : undefined;
  const off = {
    id: 'off',
    name: 'off',
    without: dropped ? [dropped.id] : [],
    ...(maybe(0.3) && { onStand: true }),
  };
  return {
    aircraft: {
      ...whole,
      targetBand: { by: 'station', forwardMm, aftMm },
      lateralToleranceMm: Math.round(between(1, 6)),
      ...(dropped && {
        switches: [{ id: 'drop', name: 'Drop', positions: [{ id: 'on', name: 'on' }, off] }],
      }),
    },
    estimate: maybe(0.5) ? estimateAt(aftMm + between(-6, 60)) : null,
  };
}

const pairOf = (right: Part): readonly Part[] => {
  const [x, y, z] = right.positionMm;
  return [
    { ...right, id: 'pair-right', name: 'Pair, right', role: 'energy' },
    { ...right, id: 'pair-left', name: 'Pair, left', role: 'energy', positionMm: [x, -y, z] },
  ];
};
