import type { Aircraft } from '../document/types';
import { wholeFit } from '../fit/wholeFit';
import { loadEnvelopeOf } from '../loads/loadStates';
import { judge } from './judge';
import type { Judgement, Known, LoadSearch } from './types';

/** What cannot be worked out here: the attitude, and the estimate of the neutral point, which is a worker's. */
export type Given = Pick<Known, 'down' | 'estimate'> &
  Partial<Pick<Known, 'positions' | 'estimateFresh' | 'estimating'>>;

/**
 * The judgement with everything worked out here and now, the fit and as much of the load states as it takes: where they
 * are few, each along its certified travel; else by the search through them all. For commands, workers, and whatever is
 * judged again before it is offered. Takes milliseconds, or up to seconds with many switches.
 */
export function judgeFully(aircraft: Aircraft, given: Given): Judgement {
  const fit = wholeFit(aircraft).problems;
  const looked = judge(aircraft, { ...given, loads: { status: 'unfinished' }, fit, certainty: null });
  const finite = looked.findings.every(({ kind }) => kind !== 'not-finite');
  if (looked.loads === 'certified' || !finite) return looked;
  return judge(aircraft, { ...given, loads: loadsOf(aircraft, given), fit, certainty: null });
}

function loadsOf(aircraft: Aircraft, { down }: Given): LoadSearch {
  try {
    return { status: 'found', envelope: loadEnvelopeOf(aircraft, down) };
  } catch (error) {
    // More combinations than can be searched are refused with a sentence.
    if (!(error instanceof RangeError)) throw error;
    return { status: 'failed', sentence: error.message };
  }
}
