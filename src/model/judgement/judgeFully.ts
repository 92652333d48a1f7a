import type { Aircraft } from '../document/types';
import { loadEnvelopeOf } from '../loads/loadStates';
import { fitProblemsOf } from './fitProblems';
import { judge } from './judge';
import type { Judgement, Known } from './types';

/** What cannot be worked out here: the attitude, and the estimate of the neutral point, which is a worker's. */
export type Given = Pick<Known, 'down' | 'estimate'> & Partial<Pick<Known, 'positions' | 'estimateFresh'>>;

/**
 * The judgement with everything worked out here and now: the load states by the certified search, and the fit. For
 * commands, workers, and whatever is judged again before it is offered. Takes milliseconds to tens of them.
 */
export function judgeFully(
  aircraft: Aircraft,
  given: Given,
  fit: NonNullable<Judgement['fit']> = fitProblemsOf(aircraft),
): Judgement {
  return judge(aircraft, {
    ...given,
    loads: { status: 'found', envelope: loadEnvelopeOf(aircraft, given.down) },
    fit,
    certainty: null,
  });
}
