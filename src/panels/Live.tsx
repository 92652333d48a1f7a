import { useCallback, useSyncExternalStore } from 'react';
import type { Bench } from '../store/bench';
import { useBench, useSteadyList } from '../store/react';

/** A word or figure worked out from the bench, redrawn only when it reads differently. */
export function useBenchValue<T extends string | number | boolean | null>(select: (bench: Bench) => T): T {
  return useWorkedOut(select);
}

function useWorkedOut<T>(select: (bench: Bench) => T): T {
  const bench = useBench();
  const subscribe = useCallback(
    (listener: () => void) => {
      const { balance, view, rest, place, fit, verdict } = bench;
      const off = [balance, view, rest, place, fit, verdict.api].map((store) => store.subscribe(listener));
      return () =>
        off.forEach((stop) => {
          stop();
        });
    },
    [bench],
  );
  return useSyncExternalStore(subscribe, () => select(bench));
}

/** The same of a list, whose entries are words, figures or plain records of them. */
export function useBenchList<T>(select: (bench: Bench) => readonly T[]): readonly T[] {
  return useWorkedOut(useSteadyList(select));
}

export function Live({ read }: { readonly read: (bench: Bench) => string }) {
  return <>{useBenchValue(read)}</>;
}
