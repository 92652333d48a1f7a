import type { Vec3 } from '../../../src/engine/geometry/types';
import type { Shape } from '../../../src/engine/mass/shapes';
import type { Aircraft, Block, Fuselage, Part, Surface } from '../../../src/model/document/types';
import { aircraftOf } from '../aircraft';

const straight = { yawDeg: 0, pitchDeg: 0, rollDeg: 0 } as const;

export const partAt = (
  id: string,
  shape: Part['shape'],
  positionMm: Vec3,
  over: Partial<Part> = {},
): Part => ({
  id,
  name: id,
  role: 'other',
  shape,
  massG: 100,
  positionMm,
  ...straight,
  ...over,
});

export const box = (lengthMm: number, widthMm: number, heightMm: number) =>
  ({ kind: 'box', lengthMm, widthMm, heightMm }) as const satisfies Shape;

export const blockAt = (
  id: string,
  shape: Block['shape'],
  positionMm: Vec3,
  over: Partial<Block> = {},
): Block => ({
  id,
  kind: 'block',
  name: id,
  sides: 'centre',
  shape,
  positionMm,
  ...straight,
  mass: { by: 'foam', gPerMl: 0.03 },
  ...over,
});

/** A square hull from station 0 to 600, 120 wide and high, walls of 2. */
export const squareHull: Fuselage = {
  id: 'hull',
  kind: 'fuselage',
  name: 'Hull',
  sides: 'centre',
  buttlineMm: 0,
  sections: [0, 600].map((stationMm) => ({
    stationMm,
    widthMm: 120,
    heightMm: 120,
    waterlineMm: 0,
    roundness: 0,
  })),
  skinMm: 2,
  mass: { by: 'skin', gPerM2: 1000 },
};

/** A slab of a wing, 48 thick at the most, its root on the hull's right side. */
export const slabWing: Surface = {
  id: 'wing',
  kind: 'surface',
  name: 'Wing',
  role: 'wing',
  sides: 'both',
  rootMm: [100, 60, 0],
  cantDeg: 0,
  incidenceDeg: 0,
  rootChordMm: 400,
  rootThicknessPct: 12,
  panels: [{ spanMm: 500, tipChordMm: 400, sweepMm: 0, dihedralDeg: 0, twistDeg: 0, tipThicknessPct: 12 }],
  mass: { by: 'weighed', massG: 500 },
};

export const benchOf = (
  structure: Aircraft['structure'],
  parts: readonly Part[],
  over: Partial<Aircraft> = {},
): Aircraft => ({ ...aircraftOf(structure, parts), ...over });
