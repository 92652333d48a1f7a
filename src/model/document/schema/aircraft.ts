import * as v from 'valibot';
import { targetBand } from './band';
import {
  about,
  angleDeg,
  choice,
  flag,
  flowMlPerMin,
  fuelTemperatureC,
  id,
  label,
  liquidGPerMl,
  liquidPlusMinusGPerMl,
  list,
  massG,
  note,
  percent,
  percentOfMac,
  placeMm,
  plusMinusG,
  plusMinusMm,
  pointMm,
  rank,
  record,
  sizeMm,
  sizeOrZeroMm,
  timeS,
  twinId,
  volumeMl,
} from './fields';
import { bay, hatch, keepApartRule, lead, loadFactors } from './fit';
import { mostOf } from './limits';
import { ballastFreeZone, ballastSpot } from './place';
import { power, powerFlight } from './power';
import { partShape, tankShape } from './shapes';
import { massFrom, sizeFrom } from './sources';
import { structurePiece } from './structure';
import { loadSwitch } from './switches';
import { talk } from './talk';
import { tensor } from './tensor';
import { traceImages, traces } from './traces';
import { variants } from './variants';
import { day, weighIn } from './weighIn';

export const FORMAT = 'counterpoise aircraft';
export const VERSION = 2;

/** A named point that a tape measure reaches; any reading may be shown from it. */
const referencePoint = record({ id, name: label, positionMm: pointMm });

/** Static margins that are wanted, % MAC: the least belongs to the aft limit, the most to the forward one. */
const marginRange = record({ minPct: percentOfMac, maxPct: percentOfMac });

/** What the estimate of the neutral point is asked for. */
const stability = record(
  {
    marginRange: about(
      v.optional(v.nullable(marginRange)),
      'the static margin wanted, % MAC; the band comes from it when no targetBand is stated',
    ),
    fuselage: about(
      v.optional(v.boolean('Expected true or false')),
      "whether the fuselage's part in the neutral point is counted; it is when this is left out",
    ),
    kind: about(
      v.optional(choice(['trainer', 'sport', 'aerobatic', 'glider', 'flyingWing', 'canard', 'jet', 'scale'])),
      'the kind of aircraft whose usual margin is offered; left out, layout and engine decide',
    ),
    mac: about(
      v.optional(choice(['gross', 'exposed'])),
      '% MAC is read on the wing through the body with all its pieces, or on the surface as drawn; left out, a targetBand in % MAC is read as drawn and all else gross',
    ),
  },
  'what the estimate of the neutral point is asked for',
);

/**
 * The bare airframe on scales. `use`: `compare` only says how far the sum of the shapes is off;
 * `correct` adds what is missing as a point mass, or does as `replace` where no point mass within the
 * airframe can; `replace` takes the weighed mass and CG in place of the shapes, with their inertia scaled.
 */
const bareAirframe = record(
  {
    massG,
    stationMm: placeMm,
    buttlineMm: placeMm,
    waterlineMm: v.optional(placeMm),
    plusMinusG,
    plusMinusMm,
    use: choice(['compare', 'correct', 'replace']),
    massFrom,
    contains: about(v.optional(label), 'what the scales had on them, in words'),
  },
  'the bare airframe as weighed: compare it with the shapes, correct them, or replace them',
);

const phase = record({
  name: label,
  durationS: timeS,
  throttlePct: percent,
});

const flowPoint = record({ throttlePct: percent, mlPerMin: flowMlPerMin });

/** What the tanks hold and how it leaves them: burnt by an engine, or dumped as water ballast. */
const fuel = record(
  {
    kind: choice(['petrol', 'methanol', 'kerosene', 'water', 'other']),
    name: label,
    densityGPerMl: about(liquidGPerMl, 'g/ml as weighed; at 15 °C where a temperature is given'),
    temperatureC: about(
      v.optional(fuelTemperatureC),
      'kerosene only: °C in the tanks, from which the density is worked out',
    ),
    plusMinusGPerMl: about(
      v.optional(liquidPlusMinusGPerMl),
      'what the density may be off by, g/ml: two standard uncertainties',
    ),
    use: choice(['burn', 'dump']),
    share: choice(['volume', 'level']),
    flow: record({
      idleMlPerMin: flowMlPerMin,
      fullMlPerMin: flowMlPerMin,
      table: about(
        v.optional(list(flowPoint)),
        'flows measured between idle and full throttle, throttles rising; straight lines between them',
      ),
    }),
    profile: record({ name: label, phases: list(phase) }),
    reservePct: percent,
  },
  'what the tanks hold and how it leaves them',
);

const inTheOpen = about(
  flag,
  'for fit: it is meant to stand outside, or to reach through the skin; no hull or surface has to hold it',
);

export const tank = record(
  {
    id,
    name: label,
    shape: tankShape,
    positionMm: pointMm,
    yawDeg: angleDeg,
    pitchDeg: angleDeg,
    rollDeg: angleDeg,
    mirrored: about(flag, 'the shape is mirrored left for right in its own frame before it is posed'),
    emptyMassG: massG,
    plusMinusG,
    plusMinusMm,
    startMl: about(v.nullable(volumeMl), 'liquid at the start, ml; null is brim-full'),
    unusableMl: about(volumeMl, 'what stays behind when the tank has stopped giving, ml'),
    feeds: about(id, '"outlet" (engine or dump valve) or the id of the tank that this one feeds'),
    rank: about(rank, 'among tanks that feed the same place the lower rank drains first'),
    locked: flag,
    inTheOpen,
    massFrom,
    sizeFrom,
    twinId,
    weighedOn: about(v.optional(day), 'the day that it went on the scales, empty'),
  },
  'a tank; its shape is the inside',
);

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

export const part = record(
  {
    id,
    name: label,
    role: choice(roles),
    shape: partShape,
    massG,
    plusMinusG,
    plusMinusMm,
    inertiaGmm2: about(
      v.optional(tensor),
      'as measured, about its own CG along its own axes, g·mm²; a uniform solid when left out',
    ),
    positionMm: pointMm,
    yawDeg: angleDeg,
    pitchDeg: angleDeg,
    rollDeg: angleDeg,
    locked: flag,
    inTheOpen,
    bayId: about(v.optional(id), 'the bay that it must stay in'),
    mayTurn: about(
      v.optional(choice(['flat', 'any'])),
      'how a search for places may turn it by right angles: about the vertical only, or on end and on its side too; not at all when left out',
    ),
    gyro: about(flag, 'senses rotation: it should stand near the CG and square to the axes'),
    massFrom,
    sizeFrom,
    twinId,
    weighedOn: about(v.optional(day), 'the day that it went on the scales'),
    notes: v.optional(note),
    power: v.optional(power),
  },
  'anything carried',
);

export const aircraft = record(
  {
    format: v.literal(FORMAT, `Expected "${FORMAT}"`),
    version: v.literal(VERSION, `Expected ${VERSION}`),
    name: label,
    kind: choice(['petrol', 'turbine', 'electric', 'glider']),
    notes: note,
    datum: about(label, 'what the datum is, in words: "tip of the nose"'),
    referencePoints: list(referencePoint),
    targetBand: v.nullable(targetBand),
    stability: v.optional(stability),
    lateralToleranceMm: about(sizeOrZeroMm, 'how far off centre the CG may be, mm'),
    structure: list(structurePiece, mostOf.structure),
    bareAirframe: v.nullable(bareAirframe),
    fuel: v.nullable(fuel),
    tanks: list(tank, mostOf.tanks),
    parts: list(part, mostOf.parts),
    switches: about(
      v.optional(list(loadSwitch, mostOf.switches)),
      'what can be aboard or not, full or empty; retracting legs apart',
    ),
    bays: about(v.optional(list(bay)), 'where parts may be mounted'),
    hatches: about(v.optional(list(hatch)), 'openings that parts go in through'),
    keepApart: about(
      v.optional(list(keepApartRule)),
      'what must be kept apart; the usual rules when left out',
    ),
    leads: v.optional(list(lead, mostOf.leads)),
    ballastSpots: about(v.optional(list(ballastSpot)), 'where ballast may be put'),
    ballastFree: about(v.optional(list(ballastFreeZone)), 'where no ballast may be'),
    loadFactors: v.optional(loadFactors),
    powerFlight: v.optional(powerFlight),
    weighIns: about(v.optional(list(weighIn)), 'the log of weigh-ins, in the order that they were made'),
    variants: v.optional(variants),
    traces,
    traceImages,
    talk,
    gridMm: about(sizeMm, 'the step that dragging snaps to, mm'),
  },
  'One aircraft on the bench. Lengths in mm from the datum (station aft +, buttline right +, waterline up +), masses in g, angles in degrees. Unknown keys are kept.',
);
