import * as v from 'valibot';
import {
  angleDeg,
  id,
  label,
  massG,
  percent,
  pointMm,
  real,
  record,
  sizeMm,
  sizeOrZeroMm,
  volumeMl,
} from './fields';
import { partShape, tankShape } from './shapes';
import { structurePiece } from './structure';

export const FORMAT = 'counterpoise aircraft';
export const VERSION = 1;

/** A named point that a tape measure reaches; any reading may be shown from it. */
const referencePoint = record({ id, name: label, positionMm: pointMm });

/** Where the CG must be: between two stations, or between two percentages of a surface's MAC. */
const targetBand = v.variant('by', [
  record({
    by: v.literal('station'),
    forwardMm: real,
    aftMm: real,
    /** The reference point that the limits were stated from; the figures themselves are from the datum. */
    statedFrom: v.optional(id),
  }),
  record({ by: v.literal('mac'), surfaceId: id, forwardPct: real, aftPct: real }),
]);

/**
 * The bare airframe on scales. `use`: `compare` only says how far the sum of the shapes is off;
 * `correct` adds the difference as a point mass; `replace` takes the weighed mass and CG in place of
 * the shapes, with their inertia scaled to it.
 */
const bareAirframe = record({
  massG,
  stationMm: real,
  buttlineMm: real,
  waterlineMm: v.optional(real),
  use: v.picklist(['compare', 'correct', 'replace']),
});

const phase = record({
  name: label,
  durationS: v.pipe(v.number(), v.finite(), v.minValue(0)),
  throttlePct: percent,
});

/** What the tanks hold and how it leaves them: burnt by an engine, or dumped as water ballast. */
const fuel = record({
  kind: v.picklist(['petrol', 'methanol', 'kerosene', 'water', 'other']),
  name: label,
  densityGPerMl: v.pipe(v.number(), v.finite(), v.gtValue(0), v.maxValue(25)),
  use: v.picklist(['burn', 'dump']),
  share: v.picklist(['volume', 'level']),
  flow: record({ idleMlPerMin: volumeMl, fullMlPerMin: volumeMl }),
  profile: record({ name: label, phases: v.array(phase) }),
  reservePct: percent,
});

export const tank = record({
  id,
  name: label,
  shape: tankShape,
  positionMm: pointMm,
  yawDeg: angleDeg,
  pitchDeg: angleDeg,
  rollDeg: angleDeg,
  mirrored: v.optional(v.boolean()),
  emptyMassG: massG,
  /** Liquid at the start; null is brim-full. */
  startMl: v.nullable(volumeMl),
  unusableMl: volumeMl,
  /** "outlet" (engine or dump valve) or the id of the tank that this one feeds. */
  feeds: id,
  rank: v.pipe(v.number(), v.integer()),
  locked: v.optional(v.boolean()),
});

export const roles = [
  'energy',
  'radio',
  'control',
  'powerplant',
  'payload',
  'undercarriage',
  'ballast',
  'other',
] as const;

export const part = record({
  id,
  name: label,
  role: v.picklist(roles),
  shape: partShape,
  massG,
  /** What the scales may be off by, g. */
  plusMinusG: v.optional(massG),
  positionMm: pointMm,
  yawDeg: angleDeg,
  pitchDeg: angleDeg,
  rollDeg: angleDeg,
  locked: v.optional(v.boolean()),
  /** The figures are typical ones; weigh yours. */
  typical: v.optional(v.boolean()),
  notes: v.optional(v.string()),
});

export const aircraft = record({
  format: v.literal(FORMAT, `Expected "${FORMAT}"`),
  version: v.literal(VERSION),
  name: label,
  kind: v.picklist(['petrol', 'turbine', 'electric', 'glider']),
  notes: v.string(),
  /** What the datum is, in words: "tip of the nose". */
  datum: label,
  referencePoints: v.array(referencePoint),
  targetBand: v.nullable(targetBand),
  /** How far off centre the CG may be, mm. */
  lateralToleranceMm: sizeOrZeroMm,
  structure: v.array(structurePiece),
  bareAirframe: v.nullable(bareAirframe),
  fuel: v.nullable(fuel),
  tanks: v.array(tank),
  parts: v.array(part),
  /** The step that dragging snaps to, mm. */
  gridMm: sizeMm,
});
