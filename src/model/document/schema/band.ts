import * as v from 'valibot';
import { about, id, list, percent, percentOfMac, placeMm, record } from './fields';

/** The load state that limits hold for; for every one where it is left out. */
const statedFor = about(
  v.optional(
    record({
      fuelPct: percent,
      switches: list(record({ switchId: id, positionId: id })),
    }),
  ),
  'the load state that alone is held to the limits; every one when left out',
);

/** Where the CG must be: between two stations, or between two percentages of a surface's MAC. */
export const targetBand = v.variant('by', [
  record({
    by: v.literal('station'),
    forwardMm: placeMm,
    aftMm: placeMm,
    statedFrom: about(
      v.optional(id),
      'the reference point that the limits were stated from; the figures themselves are from the datum',
    ),
    statedFor,
  }),
  record({
    by: v.literal('mac'),
    surfaceId: id,
    forwardPct: percentOfMac,
    aftPct: percentOfMac,
    statedFor,
  }),
]);
