import { type Balance, balanceAt, LEVEL, type Loading } from '../model/balance/balance';
import { blankAircraft } from '../model/document/blank';
import type { Aircraft } from '../model/document/types';
import type { DocumentStore } from './documentStore';
import type { StabilityStore } from './stabilityStore';
import type { ViewStore } from './viewStore';

/** The balance of what is on the bench now, worked out once for each aircraft and loading. */
export interface BalanceStore {
  /** While it cannot be worked out, that of an empty bench: an old one would be a lie. `fault` says why. */
  get(): Balance;
  /** Why the balance of what is on the bench now is not known, in a sentence; null when it is. */
  fault(): string | null;
  /** Works it out again after a fault. */
  retry(): void;
  /** Called after the aircraft, the fuel shown, the attitude, a switch or the estimate has changed. */
  subscribe(listener: () => void): () => void;
}

interface Answer {
  readonly causes: readonly unknown[];
  readonly balance: Balance;
  readonly fault: string | null;
}

export function createBalanceStore(
  document: DocumentStore,
  view: ViewStore,
  stability: StabilityStore,
): BalanceStore {
  const retried = new Set<() => void>();
  let last: Answer | null = null;
  const answer = (): Answer => {
    const aircraft = document.current();
    const { fuelFraction, down, positions } = view.getState();
    const { estimate, fresh } = stability.get();
    const causes = [aircraft, fuelFraction, down, positions, estimate, fresh];
    if (!last || causes.some((value, index) => value !== last?.causes[index])) {
      const loading = { fuelFraction, down, positions, estimate, estimateFresh: fresh };
      last = { causes, ...balanceOrFault(aircraft, loading) };
    }
    return last;
  };
  return {
    get: () => answer().balance,
    fault: () => answer().fault,
    retry: () => {
      last = null;
      for (const listener of retried) listener();
    },
    subscribe: (listener) => {
      const offDocument = document.subscribe(listener);
      const offStability = stability.subscribe(listener);
      const offView = view.subscribe((now, before) => {
        const same = (['fuelFraction', 'down', 'positions'] as const).every(
          (key) => now[key] === before[key],
        );
        if (!same) listener();
      });
      retried.add(listener);
      return () => {
        offDocument();
        offStability();
        offView();
        retried.delete(listener);
      };
    },
  };
}

function balanceOrFault(aircraft: Aircraft, loading: Loading): Omit<Answer, 'causes'> {
  try {
    return { balance: balanceAt(aircraft, loading), fault: null };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return {
      balance: balanceAt(blankAircraft(), { fuelFraction: loading.fuelFraction, down: LEVEL }),
      fault: `The balance of ${aircraft.name} could not be worked out: ${reason.replace(/\.$/, '')}.`,
    };
  }
}
