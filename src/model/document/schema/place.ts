import * as v from 'valibot';
import { about, id, label, massG, pointMm, record } from './fields';

/** What a letter scale tells apart: less is no piece of ballast. */
const leastStepG = 0.01;

const stepG = v.pipe(massG, v.minValue(leastStepG, `Expected more than 0 g, ${leastStepG} g at least`));

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
