import { useCallback, useEffect, useRef, useState } from 'react';
import { sameList } from '../../engine/memory/memory';
import type { WhyNot } from '../../engine/place/whyNot';
import type { Aircraft } from '../../model/document/types';
import { placeLifts } from '../../model/place/placeLifts';
import type { PlaceFound, PlaceRequest } from '../../model/place/searchPlaces';
import { useBench, useCommitted, useView } from '../../store/react';

/** How long the search for reasons may take, ms. */
const REASONS_MS = 15_000;

/** What is searched: the aircraft as it is seen, and what is asked of it. */
export interface Asked {
  readonly committed: Aircraft;
  readonly request: PlaceRequest;
}

export type Search =
  | { readonly phase: 'idle' }
  | { readonly phase: 'failed'; readonly sentence: string }
  | {
      readonly phase: 'running';
      readonly asked: Asked;
      readonly sinceMs: number;
      readonly found: PlaceFound | null;
    }
  | {
      readonly phase: 'done';
      readonly asked: Asked;
      /** The best that can be built; null where a search was cancelled before there was any. */
      readonly found: PlaceFound | null;
      /** Null while it is not known, or not asked. */
      readonly reasons: WhyNot | null;
      readonly cancelled: boolean;
    };

/** The aircraft that a variant of a request starts from. */
export const startOf = ({ request }: Asked, { variant }: PlaceFound): Aircraft =>
  request.variants[variant]!.aircraft;

/** One search at a time, with its progress. `stale` once the aircraft or its attitude is not what was searched. */
export function useSearch() {
  const { place, document } = useBench();
  const committed = useCommitted((aircraft) => aircraft);
  const down = useView((now) => now.down);
  const [search, setSearch] = useState<Search>({ phase: 'idle' });
  const stop = useRef<() => void>(() => {});
  const halt = useCallback(() => {
    stop.current();
    stop.current = () => {};
  }, []);
  useEffect(() => halt, [halt]);

  const clear = useCallback(() => {
    halt();
    setSearch({ phase: 'idle' });
  }, [halt]);

  const run = useCallback(
    async (request: PlaceRequest) => {
      halt();
      const solve = place.solver();
      if (!solve) return setSearch({ phase: 'failed', sentence: 'The search is still being loaded.' });
      const asked: Asked = { committed: document.api.getState().committed, request };
      let live = true;
      const set = (next: Search) => live && setSearch(next);
      const end = (cancel: () => void) => {
        stop.current = () => {
          live = false;
          cancel();
        };
      };
      const sinceMs = performance.now();
      set({ phase: 'running', asked, sinceMs, found: null });
      try {
        const searching = solve({ task: 'search', request, timeMs: place.get().searchMs }, (progress) => {
          if ('answer' in progress) set({ phase: 'running', asked, sinceMs, found: progress });
        });
        end(searching.cancel);
        const found = await searching.answer;
        if (!found) return;
        if ('fault' in found) return set({ phase: 'failed', sentence: found.fault });
        const done = { phase: 'done', asked, found, cancelled: false } as const;
        set({ ...done, reasons: null });
        const none = !found.answer.best && found.answer.boundG === Number.POSITIVE_INFINITY;
        if (!none || request.probability !== null) return;
        const why = placeLifts(startOf(asked, found), request.settings);
        if ('fault' in why) return;
        const { problem, lifts } = why;
        const asking = solve({ task: 'why not', problem, lifts, timeMs: REASONS_MS });
        end(asking.cancel);
        const reasons = await asking.answer;
        if (reasons) set({ ...done, reasons });
      } catch (error) {
        set({ phase: 'failed', sentence: error instanceof Error ? error.message : String(error) });
      }
    },
    [halt, place, document],
  );

  /** Ends the search and keeps the best so far. */
  const cancel = useCallback(() => {
    halt();
    setSearch((now) =>
      now.phase === 'running' ? { ...now, phase: 'done', reasons: null, cancelled: true } : now,
    );
  }, [halt]);

  const asked = 'asked' in search ? search.asked : null;
  const stale =
    asked !== null && (asked.committed !== committed || !sameList(asked.request.settings.down, down));
  return { search, stale, run, cancel, clear };
}
