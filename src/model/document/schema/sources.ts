import * as v from 'valibot';
import { about, choice } from './fields';

/** Where a mass may come from, the surest first. */
export const massSources = ['weighed', 'measured', 'typical', 'assumed', 'unknown'] as const;
/** Where a size may come from, the surest first. */
export const sizeSources = ['measured', 'typical', 'assumed', 'unknown'] as const;

export const massFrom = about(
  v.optional(choice(massSources)),
  'where the mass comes from: weighed on a scale, measured (worked out from a weighing of more than this), typical of its kind, assumed from proportions, or unknown; left out, it was typed in and nobody said',
);

export const sizeFrom = about(
  v.optional(choice(sizeSources)),
  'where the sizes come from: measured, typical of its kind, assumed from proportions, or unknown; left out, they were typed in and nobody said',
);
