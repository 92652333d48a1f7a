import type { StoreApi } from 'zustand/vanilla';
import { notesOn } from '../engine/memory/memory';
import {
  type StabilityAnswer,
  type StabilityDetail,
  type StabilityEstimate,
  type StabilityInput,
  stabilityInput,
} from '../model/stability/stability';
import { createCalmStore } from './calmStore';
import type { DocumentStore } from './documentStore';

export interface StabilityState {
  /** The last estimate of the aircraft on the bench; null before the first and where there is none. */
  readonly estimate: StabilityEstimate | null;
  /** Whether the estimate belongs to the very structure and settings that are seen now. */
  readonly fresh: boolean;
  /** Why there is no estimate, in a sentence. */
  readonly fault: string | null;
  /** The estimate itself stopped, so that another try may do: not the geometry's fault. */
  readonly mayRetry: boolean;
}

/** Estimates the neutral point elsewhere: in a worker, or in a test by hand. */
export type StabilitySolve = (input: StabilityInput, detail: StabilityDetail) => Promise<StabilityAnswer>;

/**
 * Keeps the estimate up with the aircraft. Only structure and settings count: dragging a pack asks for
 * nothing. While the structure is previewed the estimate is coarse, once it is committed fine.
 */
export interface StabilityStore {
  readonly api: StoreApi<StabilityState>;
  get(): StabilityState;
  subscribe(listener: () => void): () => void;
  /** Nothing is estimated before this. */
  start(solve: StabilitySolve): void;
  /** Asks again after an estimate that stopped. */
  retry(): void;
}

interface Wish {
  readonly input: StabilityInput;
  readonly detail: StabilityDetail;
}

const NOTHING: StabilityState = { estimate: null, fresh: false, fault: null, mayRetry: false };

/** An estimate that stopped, and why. */
interface Stopped {
  readonly stopped: string;
}

function stateOf(answer: StabilityAnswer | Stopped, fresh: boolean): StabilityState {
  if (answer === null) return { ...NOTHING, fresh };
  if ('stopped' in answer) return { ...NOTHING, fresh, fault: answer.stopped, mayRetry: true };
  if ('fault' in answer) return { ...NOTHING, fresh, fault: answer.fault };
  return { ...NOTHING, fresh, estimate: answer };
}

/** Must be made before anything else listens to the document, so that nobody sees a stale figure as fresh. */
export function createStabilityStore(document: DocumentStore): StabilityStore {
  const api = createCalmStore<StabilityState>(() => NOTHING);
  const fineAnswers = notesOn<StabilityInput, StabilityAnswer>();
  let solve: StabilitySolve | null = null;
  let solving = false;
  /** How many aircraft have been put on the bench: an answer for an earlier one is of no use. */
  let aircraftCount = 0;
  /** What the state belongs to. */
  let shown: Wish | null = null;

  const wished = (): Wish => {
    const input = stabilityInput(document.current());
    const atRest = input === stabilityInput(document.api.getState().committed);
    return { input, detail: atRest ? 'fine' : 'coarse' };
  };

  const show = (wish: Wish, answer: StabilityAnswer | Stopped, fresh: boolean) => {
    shown = wish;
    api.setState(stateOf(answer, fresh));
  };

  /** Takes an answer if it is what is wanted, or the newest there is of a drag that goes on; else drops it. */
  const take = (asked: Wish, answer: StabilityAnswer | Stopped) => {
    const wish = wished();
    const fresh = asked.input === wish.input;
    if (fresh || (asked.detail === 'coarse' && wish.detail === 'coarse')) show(asked, answer, fresh);
  };

  const ask = async (asked: Wish, from: StabilitySolve) => {
    solving = true;
    const ofAircraft = aircraftCount;
    const answer = await from(asked.input, asked.detail).then(
      (came) => {
        if (asked.detail === 'fine') fineAnswers.set(asked.input, came);
        return came;
      },
      (error: unknown) => ({ stopped: error instanceof Error ? error.message : String(error) }),
    );
    solving = false;
    if (ofAircraft === aircraftCount) take(asked, answer);
    update();
  };

  const update = () => {
    const wish = wished();
    const kept = fineAnswers.get(wish.input);
    if (kept !== undefined) {
      if (shown?.input !== wish.input || shown.detail !== 'fine' || !api.getState().fresh) {
        show({ ...wish, detail: 'fine' }, kept, true);
      }
      return;
    }
    const fresh = shown?.input === wish.input;
    if (fresh !== api.getState().fresh) api.setState({ fresh });
    if (solve && !solving && !(fresh && shown?.detail === wish.detail)) ask(wish, solve);
  };

  document.api.subscribe((now, before) => {
    const replaced = now.aircraftNumber !== before.aircraftNumber;
    if (replaced) {
      shown = null;
      aircraftCount += 1;
      api.setState(NOTHING);
    }
    update();
  });

  return {
    api,
    get: api.getState,
    subscribe: (listener) => api.subscribe(listener),
    start: (given) => {
      solve = given;
      update();
    },
    retry: () => {
      if (!api.getState().mayRetry) return;
      shown = null;
      api.setState(NOTHING);
      update();
    },
  };
}
