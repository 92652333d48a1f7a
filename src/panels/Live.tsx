import { useCallback, useEffect, useLayoutEffect, useRef, useSyncExternalStore } from 'react';
import type { Bench } from '../store/bench';
import { useBench, useFail, useSteadyList } from '../store/react';
import { setText } from './drawing';
import { follow, followAtRest } from './following';

/** A word or figure worked out from the bench, redrawn only when it reads differently. */
export function useBenchValue<T extends string | number | boolean | null>(select: (bench: Bench) => T): T {
  return useWorkedOut(select);
}

/**
 * The same, or a thing that is the very same while nothing changed, but while something is in hand only where it rests:
 * for places that cost too much to draw with each move.
 */
export function useRestingValue<T>(select: (bench: Bench) => T): T {
  const bench = useBench();
  const subscribe = useCallback((listener: () => void) => followAtRest(bench, listener), [bench]);
  return useSyncExternalStore(subscribe, () => select(bench));
}

function useWorkedOut<T>(select: (bench: Bench) => T): T {
  const bench = useBench();
  const subscribe = useCallback((listener: () => void) => follow(bench, listener), [bench]);
  return useSyncExternalStore(subscribe, () => select(bench));
}

/** The same of a list, whose entries are words, figures or plain records of them. */
export function useBenchList<T>(select: (bench: Bench) => readonly T[]): readonly T[] {
  return useWorkedOut(useSteadyList(select));
}

/**
 * Writes words by hand: now, with every change of the bench, and after React has made them anew. Words that change with
 * each move of a hand then render nothing.
 */
export function useWritten(write: (bench: Bench) => void): void {
  const bench = useBench();
  const latest = useRef(write);
  latest.current = write;
  const fail = useRef(useFail());
  useLayoutEffect(() => write(bench));
  useEffect(
    () =>
      follow(bench, () => {
        try {
          latest.current(bench);
        } catch (error) {
          fail.current(error);
        }
      }),
    [bench],
  );
}

/** Words that follow the bench. */
export function Live({ read }: { readonly read: (bench: Bench) => string }) {
  const words = useRef<HTMLSpanElement>(null);
  useWritten((bench) => setText(words.current, read(bench)));
  return <span ref={words} />;
}
