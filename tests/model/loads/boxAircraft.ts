import { blankAircraft } from '../../../src/model/document/blank';
import type {
  Aircraft,
  Fuel,
  Lead,
  Part,
  StructurePiece,
  SwitchItem,
  TankItem,
} from '../../../src/model/document/types';
import { randomFrom } from '../../randomFrom';

const level = { yawDeg: 0, pitchDeg: 0, rollDeg: 0 } as const;
const boxOf = (lengthMm: number, widthMm: number, heightMm: number) =>
  ({ kind: 'box', lengthMm, widthMm, heightMm }) as const;

/** Chance as the generators below draw on it. */
interface Chance {
  between(from: number, to: number): number;
  /** A whole number below `count`. */
  below(count: number): number;
  maybe(share: number): boolean;
  oneOf<T>(list: readonly T[]): T;
}

function chanceFrom(seed: number): Chance {
  const random = randomFrom(seed);
  const below = (count: number) => Math.floor(random() * count);
  return {
    between: (from, to) => from + (to - from) * random(),
    below,
    maybe: (share) => random() < share,
    oneOf: (list) => list[below(list.length)]!,
  };
}

const partOf = ({ between }: Chance, k: number): Part => ({
  id: `part-${k}`,
  name: `Part ${k}`,
  role: 'other',
  massG: between(20, 600),
  shape: boxOf(between(20, 100), between(20, 50), between(10, 40)),
  positionMm: [between(0, 900), between(-120, 120), between(-40, 40)],
  ...level,
});

function tankOf({ between, below, maybe }: Chance, k: number): TankItem {
  const shape = boxOf(between(60, 200), between(40, 80), between(30, 60));
  const fullMl = (shape.lengthMm * shape.widthMm * shape.heightMm) / 1000;
  return {
    id: `tank-${k}`,
    name: `Tank ${k}`,
    shape,
    positionMm: [between(50, 850), between(-100, 100), 0],
    ...level,
    emptyMassG: between(10, 60),
    startMl: maybe(0.4) ? fullMl * between(0.3, 1) : null,
    unusableMl: maybe(0.5) ? 0 : between(1, 12),
    feeds: k > 0 && maybe(0.5) ? `tank-${below(k)}` : 'outlet',
    rank: below(3),
  };
}

function structureOf({ between, maybe }: Chance): readonly StructurePiece[] {
  const block = { kind: 'block', sides: 'centre', ...level } as const;
  const weighed = (from: number, to: number) => ({ by: 'weighed', massG: between(from, to) }) as const;
  const keel: StructurePiece = {
    ...block,
    id: 'keel',
    name: 'Keel',
    shape: boxOf(800, 40, 40),
    positionMm: [450, 0, 0],
    mass: weighed(600, 1500),
  };
  const foam: StructurePiece = {
    ...block,
    id: 'foam',
    name: 'Foam',
    sides: maybe(0.5) ? 'both' : 'centre',
    shape: boxOf(between(150, 300), between(60, 120), between(60, 100)),
    positionMm: [between(200, 700), between(60, 90), 0],
    cuttable: true,
    mass: maybe(0.5)
      ? { by: 'foam', gPerMl: between(0.03, 0.12) }
      : { ...weighed(100, 300), leftMassG: between(100, 300) },
  };
  const canopy: StructurePiece = {
    ...block,
    id: 'canopy',
    name: 'Canopy',
    shape: boxOf(120, 60, 30),
    positionMm: [between(100, 500), between(-30, 30), 50],
    mass: weighed(30, 200),
  };
  const leg: StructurePiece = {
    id: 'leg',
    kind: 'leg',
    name: 'Leg',
    sides: 'both',
    topMm: [500, between(40, 90), -30],
    axleMm: [between(450, 550), between(80, 160), -200],
    strutDiameterMm: 8,
    strutMassG: between(30, 150),
    wheelDiameterMm: 80,
    wheelWidthMm: 25,
    wheelMassG: between(30, 100),
    ...(maybe(0.7) && {
      retract: {
        axis: [between(-1, 1), between(-1, 1), between(-0.2, 0.2)],
        angleDeg: between(60, 110),
      } as const,
    }),
  };
  return [keel, ...(maybe(0.7) ? [foam] : []), ...(maybe(0.5) ? [canopy] : []), ...(maybe(0.5) ? [leg] : [])];
}

const leadOf = ({ between, below, maybe, oneOf }: Chance, k: number, ends: readonly string[]): Lead => ({
  id: `lead-${k}`,
  name: `Lead ${k}`,
  from: oneOf(ends),
  to: oneOf(ends),
  massGPerM: between(30, 500),
  waypointsMm: maybe(0.5)
    ? Array.from(
        { length: 1 + below(3) },
        () => [between(0, 900), between(-100, 100), between(-30, 30)] as const,
      )
    : [],
  ...(maybe(0.5) && { lengthMm: between(300, 2500) }),
});

/** Two positions or three; things may be named by several switches, and some positions are for the stand. */
function switchOf(
  { below, maybe, oneOf }: Chance,
  k: number,
  things: readonly string[],
  tankIds: readonly string[],
): SwitchItem {
  const positions = Array.from({ length: maybe(0.2) ? 3 : 2 }, (_, at): SwitchItem['positions'][number] => {
    const names = { id: `at-${at}`, name: `at ${at}` };
    if (at === 0 && maybe(0.8)) return names;
    const without = [...new Set(Array.from({ length: 1 + below(2) }, () => oneOf(things)))];
    const empties = tankIds.length > 0 && maybe(0.4);
    return {
      ...names,
      ...((!empties || maybe(0.8)) && { without }),
      ...(empties && { empty: [oneOf(tankIds)] }),
      ...(at > 0 && maybe(0.15) && { onStand: true }),
    };
  });
  return { id: `switch-${k}`, name: `Switch ${k}`, positions };
}

const PETROL = {
  kind: 'petrol',
  name: 'Petrol',
  densityGPerMl: 0.74,
  use: 'burn',
  share: 'volume',
  flow: { idleMlPerMin: 1, fullMlPerMin: 20 },
  profile: { name: 'Circuits', phases: [] },
  reservePct: 0,
} as const satisfies Fuel;

/**
 * A small aircraft by chance, of boxes square to the axes: parts, tanks that feed each other, leads with corners, foam that
 * parts are let into, legs that swing, an airframe that may have been weighed, and up to five switches over all of it.
 */
export function boxAircraft(seed: number): Aircraft {
  const chance = chanceFrom(seed);
  const { between, below, maybe } = chance;
  const count = (most: number) => Array.from({ length: below(most + 1) }, (_, k) => k);
  const parts = [0, 1, ...count(3).map((k) => k + 2)].map((k) => partOf(chance, k));
  const tanks = count(3).map((k) => tankOf(chance, k));
  const structure = structureOf(chance);
  const ends = [...parts, ...tanks].map(({ id }) => id);
  const things = [...ends, ...structure.slice(1).map(({ id }) => id)];
  const tankIds = tanks.map(({ id }) => id);
  return {
    ...blankAircraft(),
    structure,
    parts,
    tanks,
    fuel: PETROL,
    leads: count(4).map((k) => leadOf(chance, k, ends)),
    switches: [0, ...count(4).map((k) => k + 1)].map((k) => switchOf(chance, k, things, tankIds)),
    bareAirframe: maybe(0.5)
      ? {
          massG: between(1600, 3500),
          stationMm: between(350, 550),
          buttlineMm: between(-10, 10),
          use: chance.oneOf(['correct', 'replace', 'compare']),
        }
      : null,
  };
}
