import * as v from 'valibot';
import {
  about,
  angleDeg,
  choice,
  flag,
  id,
  label,
  list,
  massG,
  note,
  percent,
  placeMm,
  pointMm,
  record,
  sizeOrZeroMm,
  timeS,
} from './fields';

const DAY_WANTED = 'Expected a day as "2026-05-12"';
/** A day of the calendar, ISO 8601. */
export const day = v.pipe(v.string(DAY_WANTED), v.isoDate(DAY_WANTED));

const PLUS_MINUS_WANTED = 'Expected 0° to 45°';
const plusMinusDeg = v.pipe(
  v.number(PLUS_MINUS_WANTED),
  v.minValue(0, PLUS_MINUS_WANTED),
  v.maxValue(45, PLUS_MINUS_WANTED),
);

const massPlusMinusG = about(massG, 'two standard uncertainties');

const scale = record({
  name: label,
  grossG: about(massG, 'as read, with whatever stands on it'),
  tareG: about(massG, 'chocks, stand or ramp on it, as read; 0 for one that was zeroed'),
  supportMm: about(pointMm, 'the axle, or the point that it carries the aircraft at'),
});

const onScales = record(
  {
    by: v.literal('scales'),
    scales: list(scale, 12),
    resolutionG: about(massG, 'the step of the display, g'),
    tapeMm: about(sizeOrZeroMm, 'what each measured place may be off by, mm: two standard uncertainties'),
    pitchDeg: about(angleDeg, 'nose up +; 0 for level'),
    pitchPlusMinusDeg: about(plusMinusDeg, 'two standard uncertainties'),
  },
  'wheels, or other supports, on scales',
);

const onStand = record(
  {
    by: v.literal('stand'),
    supportMm: about(v.nullable(placeMm), 'the station of the supports; null while nobody has measured it'),
    plusMinusMm: about(sizeOrZeroMm, 'two standard uncertainties'),
    addedG: about(massG, 'grams laid on to bring it level; 0 for none'),
    addedAtMm: about(placeMm, 'the station of the grams'),
    massG: about(v.nullable(massG), 'the whole aircraft without the grams, as weighed; null when it was not'),
    massPlusMinusG,
    across: about(
      v.optional(
        record({
          addedG: about(massG, 'grams laid on one side to bring it level; 0 for none'),
          plusMinusG: about(massG, 'how many grams make no difference: two standard uncertainties'),
          addedAtMm: about(placeMm, 'the buttline of the grams'),
        }),
      ),
      'hung by nose and tail, or set on two points of its middle; left out when nobody looked',
    ),
  },
  'the balance found on a stand, a knife edge or two fingertips',
);

const wholeG = about(
  v.nullable(massG),
  'the whole aircraft with all that was aboard, as weighed; null when it was not',
);

const onLines = record(
  {
    by: v.literal('lines'),
    view: about(
      choice(['side', 'top']),
      'side: plumb lines of the aircraft hung up, seen from the side; top: lines through two supports, seen from above',
    ),
    lines: list(
      record({
        name: label,
        throughMm: about(pointMm, 'one point of the line'),
        andMm: about(pointMm, 'another point of it'),
      }),
      12,
    ),
    plusMinusMm: about(sizeOrZeroMm, 'what each point may be off by, mm: two standard uncertainties'),
    massG: wholeG,
    massPlusMinusG,
  },
  'lines that cross at the CG',
);

const tilted = record(
  {
    by: v.literal('tilt'),
    massG: wholeG,
    massPlusMinusG,
    pivotMm: about(pointMm, 'the axle that it turns about'),
    otherMm: about(pointMm, 'the axle over the scale'),
    tareG: about(massG, 'what stands on the scale besides'),
    resolutionG: about(massG, 'the step of the display, g'),
    tapeMm: about(sizeOrZeroMm, 'what each measured place may be off by, mm: two standard uncertainties'),
    pitchPlusMinusDeg: about(plusMinusDeg, 'two standard uncertainties'),
    readings: list(
      record({
        pitchDeg: about(angleDeg, 'nose up +'),
        grossG: about(massG, 'as read, with whatever stands on the scale'),
      }),
      24,
    ),
  },
  'one scale read at several pitches, for the height of the CG',
);

const SWINGS_WANTED = 'Expected a whole number of swings, 1 to 10 000';
const swings = v.pipe(
  v.number(SWINGS_WANTED),
  v.integer(SWINGS_WANTED),
  v.minValue(1, SWINGS_WANTED),
  v.maxValue(10_000, SWINGS_WANTED),
);

const run = record({
  swings: about(swings, 'full swings, to and fro'),
  timeS: about(timeS, 'that they took together, s'),
});

const swung = record(
  {
    by: v.literal('swing'),
    axis: choice(['roll', 'pitch', 'yaw']),
    how: about(
      choice(['bifilar', 'trifilar', 'compound']),
      'on two threads, on a plate with three, or as a pendulum',
    ),
    massG: wholeG,
    massPlusMinusG,
    apartMm: about(
      sizeOrZeroMm,
      'between two threads; from the middle to a thread of three; from the axis to the CG',
    ),
    threadMm: about(sizeOrZeroMm, 'how long the threads are, mm; of no account for a pendulum'),
    tapeMm: about(sizeOrZeroMm, 'what each measured length may be off by, mm: two standard uncertainties'),
    amplitudeDeg: about(plusMinusDeg, 'how far it swung to each side'),
    runs: list(run, 40),
    thumbS: about(timeS, 'what a run may be mistimed by, s: two standard uncertainties'),
    plate: about(
      v.optional(record({ massG, periodS: timeS })),
      'the plate of three threads: its mass, and its period swung alone',
    ),
    lessAir: about(flag, 'the air that swings along is estimated and taken off'),
  },
  'the aircraft swung, for its inertia',
);

/** One weigh-in of the whole aircraft: what was read, and how the aircraft was then. */
export const weighIn = record(
  {
    id,
    date: day,
    tool: about(label, 'what it was weighed with, in words'),
    fuelPct: about(percent, 'usable liquid aboard, % of what the tanks start with'),
    switches: about(
      list(record({ switchId: id, positionId: id })),
      'the load state: the position of each switch; one that is not named was in its first',
    ),
    notes: note,
    reading: v.variant('by', [onScales, onStand, onLines, tilted, swung]),
    corrected: about(
      v.optional(list(record({ date: day, what: about(note, 'the change, in words') }))),
      'what was changed in the list because of it',
    ),
  },
  'one weigh-in of the whole aircraft',
);
