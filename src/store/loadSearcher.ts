import type { Vec3 } from '../engine/geometry/types';
import type { Aircraft } from '../model/document/types';
import type { LoadEnvelope } from '../model/loads/loadStates';

/**
 * Searches all load states elsewhere: in a worker, or in a test by hand. Once the signal is aborted nobody waits for the
 * answer any more, and whatever works on it is to stop.
 */
export type EnvelopeSolve = (
  aircraft: Aircraft,
  down: Vec3,
  signal: AbortSignal,
) => Promise<LoadEnvelope | null>;

/** What became of a search. */
export type SearchOutcome =
  | { readonly state: 'found'; readonly envelope: LoadEnvelope | null }
  | { readonly state: 'failed' | 'timed out'; readonly sentence: string }
  | { readonly state: 'called off' };

/** A search under way. */
export interface RunningSearch {
  readonly outcome: Promise<SearchOutcome>;
  callOff(): void;
}

/** A search is given up after so long, ms: its cost is bounded to a few seconds, so by then something is wrong. */
export const SEARCH_LIMIT_MS = 15_000;
/** A search that fails is tried once more, for a worker may have died of something else. */
const TRIES = 2;

/** Starts a search with a time limit and one more try. Never rejects. */
export function startSearch(solve: EnvelopeSolve, aircraft: Aircraft, down: Vec3): RunningSearch {
  const abort = new AbortController();
  let settle: (outcome: SearchOutcome) => void = () => {};
  const stopped = new Promise<SearchOutcome>((resolve) => {
    settle = resolve;
  });
  const stop = (outcome: SearchOutcome) => {
    settle(outcome);
    abort.abort();
  };
  const timer = setTimeout(() => {
    const seconds = SEARCH_LIMIT_MS / 1000;
    stop({
      state: 'timed out',
      sentence: `The search through the load states took longer than ${seconds} s.`,
    });
  }, SEARCH_LIMIT_MS);
  const outcome = Promise.race([stopped, tried(solve, aircraft, down, abort.signal)]).finally(() =>
    clearTimeout(timer),
  );
  return { outcome, callOff: () => stop({ state: 'called off' }) };
}

async function tried(
  solve: EnvelopeSolve,
  aircraft: Aircraft,
  down: Vec3,
  signal: AbortSignal,
): Promise<SearchOutcome> {
  let sentence = '';
  for (let go = 0; go < TRIES && !signal.aborted; go += 1) {
    try {
      return { state: 'found', envelope: await solve(aircraft, down, signal) };
    } catch (error) {
      sentence = error instanceof Error ? error.message : String(error);
    }
  }
  return { state: 'failed', sentence };
}
