import type { StoreApi } from 'zustand/vanilla';
import type { Advice } from '../model/advice/advise';
import type { Spoken } from '../model/advice/figures';
import { cgErrorOf, LINE_95 } from '../model/balance/certainty';
import type { Aircraft } from '../model/document/types';
import type { Given } from '../model/judgement/judgeFully';
import type { Judgement } from '../model/judgement/types';
import { createCalmStore } from './calmStore';
import { isSame, type Judged, liveJudgement } from './liveJudgement';
import type { RestStore } from './restStore';
import type { StabilityStore } from './stabilityStore';

/** Looks for a remedy elsewhere: in a worker, or in a test by hand. */
export type AdviceSolve = (aircraft: Aircraft, given: Given, spoken: Spoken) => Promise<Advice>;

/** What takes too long for a frame of a drag. */
export interface VerdictState {
  /** For what is seen now; null before it is known. The fit of the whole aircraft comes with it. */
  readonly advice: Advice | null;
  /** Why there is no advice, in a sentence; null while there is none to wait for or it is on its way. */
  readonly failed: string | null;
}

/** A check or a search that stopped, by what it is for. */
export interface Stopped {
  readonly what: 'the margin' | 'other load states' | 'a remedy';
  readonly sentence: string;
}

/**
 * The judgement of what is on the bench, live, and what would mend it, worked out at rest: dropped at once when the
 * aircraft changes, asked for again when nothing has been in hand for a moment.
 */
export interface VerdictStore {
  readonly api: StoreApi<VerdictState>;
  get(): VerdictState;
  /** The judgement of now; the very same one while nothing of it changes. */
  judgement(): Judgement;
  /** Whether something that is not checked yet is going to be. */
  checking(): boolean;
  /** 95 % of the mass ready to fly, g; null without one. */
  massPlusMinusG(): number | null;
  /** Called when the judgement or the advice may have changed. */
  subscribe(listener: () => void): () => void;
  /** No advice is sought before this. */
  start(solve: AdviceSolve): void;
  /** What could not be worked out for the answer, each in a sentence; none of it is on its way. */
  stopped(): readonly Stopped[];
  /** Works out again what stopped. */
  retry(): void;
}

/** How long nothing must change before advice is sought, ms. */
const REST_MS = 60;

export function createVerdictStore(judged: Judged): VerdictStore {
  const { document, view, stability, balance, rest, fit } = judged;
  const api = createCalmStore<VerdictState>(() => ({ advice: null, failed: null }));
  let solve: AdviceSolve | null = null;
  let solving = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** What the advice was worked out from; null while there is none. */
  let adviceCauses: readonly unknown[] | null = null;

  const spoken = (): Spoken => {
    const { units, measureFromId } = view.getState();
    const from = document.current().referencePoints.find(({ id }) => id === measureFromId);
    return { units, fromMm: from?.positionMm[0] ?? 0 };
  };
  const causes = (): readonly unknown[] => {
    const { down } = view.getState();
    const { estimate, estimateFresh } = balance.get();
    const { units, fromMm } = spoken();
    return [document.current(), down, estimateFresh ? estimate : null, units, fromMm];
  };

  const drop = () => {
    if (isSame(adviceCauses, causes())) return;
    adviceCauses = null;
    const { advice, failed } = api.getState();
    if (advice || failed) api.setState({ advice: null, failed: null });
    wait();
  };

  const wait = () => {
    clearTimeout(timer);
    if (solve) timer = setTimeout(seek, REST_MS);
  };

  const seek = async () => {
    if (!solve || solving || isSame(adviceCauses, causes())) return;
    if (document.api.getState().preview !== null) return wait();
    const asked = causes();
    const { estimate, estimateFresh } = balance.get();
    const given: Given = { down: view.getState().down, estimate: estimateFresh ? estimate : null };
    solving = true;
    const found = await solve(document.current(), given, spoken()).then(
      (advice): VerdictState => ({ advice, failed: null }),
      (error: unknown): VerdictState => ({
        advice: null,
        failed: error instanceof Error ? error.message : String(error),
      }),
    );
    solving = false;
    if (!isSame(asked, causes())) return wait();
    adviceCauses = asked;
    api.setState(found);
  };

  const judgement = liveJudgement(judged, () => api.getState().advice);

  balance.subscribe(drop);
  view.subscribe((now, before) => {
    if (now.units !== before.units || now.measureFromId !== before.measureFromId) drop();
  });
  return {
    api,
    get: api.getState,
    judgement,
    checking: () => solve !== null && adviceCauses === null,
    massPlusMinusG: () => {
      const error = cgErrorOf(document.current(), balance.get());
      return error && LINE_95 * error.massSigmaG;
    },
    subscribe: (listener) => {
      const offs = [
        balance.subscribe(listener),
        rest.subscribe(listener),
        fit.subscribe(listener),
        api.subscribe(listener),
      ];
      return () => {
        for (const off of offs) off();
      };
    },
    start: (given) => {
      solve = given;
      wait();
    },
    stopped: () => stoppedNow(stability, rest, api.getState().failed),
    retry: () => {
      stability.retry();
      rest.retrySearch();
      if (api.getState().failed === null) return;
      adviceCauses = null;
      api.setState({ advice: null, failed: null });
      wait();
    },
  };
}

function stoppedNow(stability: StabilityStore, rest: RestStore, failed: string | null): readonly Stopped[] {
  const { fault, mayRetry } = stability.get();
  const { loadSearch } = rest.get();
  const found: Stopped[] = [];
  if (fault !== null && mayRetry) found.push({ what: 'the margin', sentence: fault });
  if ('sentence' in loadSearch) found.push({ what: 'other load states', sentence: loadSearch.sentence });
  if (failed !== null) found.push({ what: 'a remedy', sentence: failed });
  return found;
}
