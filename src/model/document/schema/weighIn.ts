import * as v from 'valibot';
import {
  about,
  angleDeg,
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
} from './fields';

const DAY_WANTED = 'Expected a day as "2026-05-12"';
/** A day of the calendar, ISO 8601. */
export const day = v.pipe(v.string(DAY_WANTED), v.isoDate(DAY_WANTED));

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
    pitchPlusMinusDeg: about(angleDeg, 'two standard uncertainties'),
  },
  'wheels, or other supports, on scales',
);

const onStand = record(
  {
    by: v.literal('stand'),
    supportMm: about(placeMm, 'the station of the supports'),
    plusMinusMm: about(sizeOrZeroMm, 'two standard uncertainties'),
    addedG: about(massG, 'grams laid on to bring it level; 0 for none'),
    addedAtMm: about(placeMm, 'the station of the grams'),
    massG: about(v.nullable(massG), 'the whole aircraft without the grams, as weighed; null when it was not'),
    massPlusMinusG: about(massG, 'two standard uncertainties'),
  },
  'the balance found on a stand, a knife edge or two fingertips',
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
    reading: v.variant('by', [onScales, onStand]),
  },
  'one weigh-in of the whole aircraft',
);
