import { type Balance, balanceAt } from '../model/balance/balance';
import type { DocumentStore } from './documentStore';
import type { StabilityStore } from './stabilityStore';
import type { ViewStore } from './viewStore';

/** The balance of what is on the bench now, worked out once for each aircraft and loading. */
export interface BalanceStore {
  get(): Balance;
  /** Called after the aircraft, the fuel shown, the attitude, a switch or the estimate has changed. */
  subscribe(listener: () => void): () => void;
}

export function createBalanceStore(
  document: DocumentStore,
  view: ViewStore,
  stability: StabilityStore,
): BalanceStore {
  let key: readonly unknown[] = [];
  let balance: Balance | null = null;
  const get = () => {
    const aircraft = document.current();
    const { fuelFraction, down, positions } = view.getState();
    const { estimate, fresh } = stability.get();
    const wanted = [aircraft, fuelFraction, down, positions, estimate, fresh];
    if (!balance || wanted.some((value, index) => value !== key[index])) {
      balance = balanceAt(aircraft, { fuelFraction, down, positions, estimate, estimateFresh: fresh });
      key = wanted;
    }
    return balance;
  };
  return {
    get,
    subscribe: (listener) => {
      const offDocument = document.subscribe(listener);
      const offStability = stability.subscribe(listener);
      const offView = view.subscribe((now, before) => {
        const same = (['fuelFraction', 'down', 'positions'] as const).every(
          (key) => now[key] === before[key],
        );
        if (!same) listener();
      });
      return () => {
        offDocument();
        offStability();
        offView();
      };
    },
  };
}
