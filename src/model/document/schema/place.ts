import * as v from 'valibot';
import { about, choice, id, label, massG, pointMm, record, sizeMm } from './fields';

/** The least that a letter scale can show: less is no piece of ballast. */
const leastStepG = 0.01;

const stepG = v.pipe(massG, v.minValue(leastStepG, `Expected more than 0 g, ${leastStepG} g at least`));

const ballastMetals = ['lead', 'brass', 'steel'] as const;

/** A place that takes ballast, in steps. */
export const ballastSpot = record(
  {
    id,
    name: label,
    positionMm: pointMm,
    stepG: about(stepG, 'what one piece of ballast weighs, g'),
    mostG: about(massG, 'all that goes in there, g'),
    metal: about(v.optional(choice(ballastMetals)), 'what the ballast is made of; lead when left out'),
    lengthMm: about(
      v.optional(sizeMm),
      'the room at the spot, fore and aft; what the hull leaves when left out',
    ),
    widthMm: about(v.optional(sizeMm), 'athwart, mm'),
    heightMm: about(v.optional(sizeMm), 'up and down, mm'),
  },
  'a place that takes ballast',
);

/** A box, square to the aircraft's axes, that ballast is kept out of. */
export const ballastFreeZone = record(
  {
    id,
    name: label,
    positionMm: about(pointMm, 'its middle'),
    lengthMm: about(sizeMm, 'fore and aft, mm'),
    widthMm: about(sizeMm, 'athwart, mm'),
    heightMm: about(sizeMm, 'up and down, mm'),
  },
  'a box that ballast is kept out of: beside a hot tail pipe, over a pack',
);
