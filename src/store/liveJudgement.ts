import type { Advice } from '../model/advice/advise';
import { judge } from '../model/judgement/judge';
import type { Estimating, Judgement, Known } from '../model/judgement/types';
import type { LoadSearch } from '../model/loads/loadSearch';
import type { LoadEnvelope } from '../model/loads/loadStates';
import type { BalanceStore } from './balanceStore';
import type { DocumentStore } from './documentStore';
import type { FitStore } from './fitStore';
import type { RestStore } from './restStore';
import type { StabilityStore } from './stabilityStore';
import type { ViewStore } from './viewStore';

/** What the judgement is made of. */
export interface Judged {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly stability: StabilityStore;
  readonly balance: BalanceStore;
  readonly rest: RestStore;
  readonly fit: FitStore;
}

/** Whether something still follows from the very same causes. */
export const isSame = (a: readonly unknown[] | null, b: readonly unknown[]): boolean =>
  a?.every((cause, index) => cause === b[index]) ?? false;

/** The search through the load states as the judgement takes it. */
function searched(envelope: LoadEnvelope | null, search: LoadSearch): Known['loads'] {
  if (envelope) return { status: 'found', envelope };
  return 'sentence' in search ? { status: 'failed', sentence: search.sentence } : { status: 'unfinished' };
}

function estimatingNow(stability: StabilityStore): Estimating {
  const { fresh, fault } = stability.get();
  if (!fresh) return 'unfinished';
  return fault === null ? 'done' : 'failed';
}

/** The judgement of what is on the bench now; the very same one while nothing of it changes. */
export function liveJudgement(
  { document, view, stability, balance, rest, fit }: Judged,
  advice: () => Advice | null,
): () => Judgement {
  let kept: { readonly causes: readonly unknown[]; readonly judgement: Judgement } | null = null;
  return () => {
    const now = balance.get();
    const { envelope, loadSearch, certainty } = rest.get();
    // The judge of fit is fetched after the first paint; until then the worker's word is taken.
    const problems = fit.whole()?.problems ?? advice()?.before.fit ?? null;
    const estimating = estimatingNow(stability);
    const causes = [now, problems, envelope, loadSearch, certainty, estimating];
    if (kept && isSame(kept.causes, causes)) return kept.judgement;
    const { down, positions } = view.getState();
    const { estimate, estimateFresh } = now;
    const loads = searched(envelope, loadSearch);
    const facts = { down, positions, estimate, estimateFresh, estimating, loads, certainty };
    const judgement = judge(document.current(), { ...facts, fit: problems, balance: now });
    kept = { causes, judgement };
    return judgement;
  };
}
