type Listen = (listener: () => void) => () => void;

/**
 * One ear for all who listen to the same, while there are any: a hundred of their own would cost a move more. A listener
 * must not throw, for those after it would not hear.
 */
export function sharedEar(listen: Listen): Listen {
  const listeners = new Set<() => void>();
  let stop = () => {};
  return (listener) => {
    if (listeners.size === 0)
      stop = listen(() => {
        for (const tell of listeners) tell();
      });
    listeners.add(listener);
    return () => {
      listeners.delete(listener);
      if (listeners.size === 0) stop();
    };
  };
}

/** The same for all of several stores. */
export const earAt = (stores: readonly { subscribe(listener: () => void): () => void }[]): Listen =>
  sharedEar((tell) => {
    const off = stores.map((store) => store.subscribe(tell));
    return () =>
      off.forEach((stop) => {
        stop();
      });
  });
