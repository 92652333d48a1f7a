import * as v from 'valibot';
import { about, id, label, massG, pointMm, record } from './fields';

const stepG = v.pipe(massG, v.gtValue(0, 'Expected more than 0 g'));

/** A place that takes ballast, in steps. */
export const ballastSpot = record(
  {
    id,
    name: label,
    positionMm: pointMm,
    stepG: about(stepG, 'what one piece of ballast weighs, g'),
    mostG: about(massG, 'all that goes in there, g'),
  },
  'a place that takes ballast',
);
