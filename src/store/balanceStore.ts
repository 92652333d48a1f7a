import { type Balance, balanceAt } from '../model/balance';
import type { DocumentStore } from './documentStore';
import type { ViewStore } from './viewStore';

/** The balance of what is on the bench now, worked out once for each aircraft and loading. */
export interface BalanceStore {
  get(): Balance;
  /** Called after the aircraft, the fuel shown or the attitude has changed. */
  subscribe(listener: () => void): () => void;
}

export function createBalanceStore(document: DocumentStore, view: ViewStore): BalanceStore {
  let key: readonly unknown[] = [];
  let balance: Balance | null = null;
  const get = () => {
    const aircraft = document.current();
    const { fuelFraction, down } = view.getState();
    if (!balance || key[0] !== aircraft || key[1] !== fuelFraction || key[2] !== down) {
      balance = balanceAt(aircraft, { fuelFraction, down });
      key = [aircraft, fuelFraction, down];
    }
    return balance;
  };
  return {
    get,
    subscribe: (listener) => {
      const offDocument = document.subscribe(listener);
      const offView = view.subscribe((now, before) => {
        if (now.fuelFraction !== before.fuelFraction || now.down !== before.down) listener();
      });
      return () => {
        offDocument();
        offView();
      };
    },
  };
}
