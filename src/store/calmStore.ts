import { createStore, type StoreApi } from 'zustand/vanilla';

/**
 * A store whose listeners cannot hurt each other: what one of them throws is reported, as any error of the page is,
 * and the others are still called. Without this, one fault would leave every later place with its old figures.
 */
export function createCalmStore<T>(initial: () => T): StoreApi<T> {
  const store = createStore<T>(initial);
  return {
    ...store,
    subscribe: (listener) =>
      store.subscribe((now, before) => {
        try {
          listener(now, before);
        } catch (error) {
          reportFault(error);
        }
      }),
  };
}

/** Hands an error to whoever listens for the page's errors; without a page it is thrown once nothing else is under way. */
export function reportFault(error: unknown): void {
  if (typeof reportError === 'function') reportError(error);
  else
    queueMicrotask(() => {
      throw error;
    });
}
