import { useCallback, useEffect, useRef, useState } from 'react';
import type { RobustAnswer } from '../../engine/place/robust';
import { shrunkBand } from '../../engine/place/shrunkBand';
import type { ArrangeAnswer } from '../../engine/place/searchState';
import type { PlaceProblem } from '../../engine/place/types';
import type { WhyNot } from '../../engine/place/whyNot';
import type { Aircraft } from '../../model/document/types';
import { recheckArrangement } from '../../model/place/applyArrangement';
import { largestSigmaMm } from '../../model/place/cgSigma';
import { correctedProblem } from '../../model/place/correctedProblem';
import { placeLifts } from '../../model/place/placeLifts';
import { placeProblem } from '../../model/place/placeProblem';
import type { PlaceSettings } from '../../model/place/placeSettings';
import { useBench, useCommitted } from '../../store/react';

/** How long a search may take, and the search for reasons after it, ms. */
const SEARCH_MS = 20_000;
const REASONS_MS = 15_000;

/** Leads move with their ends: where the margin does not come out as thought to within this, it is searched again, mm. */
const SAME_MM = 0.02;
const MOST_ROUNDS = 4;
/** Taken off the band for each search after the first, so that what the leads still do finds room, mm. */
const EASE_MM = 0.03;

const eased = (problem: PlaceProblem, round: number): PlaceProblem => ({
  ...problem,
  band: shrunkBand(problem.band, round * EASE_MM) ?? problem.band,
});

/** What is searched: the aircraft as it is seen, and as the search starts from it. */
export interface Asked {
  readonly committed: Aircraft;
  readonly start: Aircraft;
  readonly settings: PlaceSettings;
  readonly problem: PlaceProblem;
}

export type Search =
  | { readonly phase: 'idle' }
  | { readonly phase: 'failed'; readonly sentence: string }
  | {
      readonly phase: 'running';
      readonly asked: Asked;
      readonly sinceMs: number;
      readonly answer: ArrangeAnswer | null;
    }
  | {
      readonly phase: 'done';
      readonly asked: Asked;
      readonly answer: ArrangeAnswer | null;
      /** What certainty costs, where it was asked for. */
      readonly price: RobustAnswer | null;
      /** Null while it is not known, or not asked. */
      readonly reasons: WhyNot | null;
      readonly cancelled: boolean;
    };

export interface Request {
  readonly start: Aircraft;
  readonly settings: PlaceSettings;
  /** Null to take the figures at their word. */
  readonly probability: number | null;
}

/** One search at a time, with its progress; given up when the aircraft becomes another. */
export function useSearch() {
  const { place, document } = useBench();
  const committed = useCommitted((aircraft) => aircraft);
  const [search, setSearch] = useState<Search>({ phase: 'idle' });
  const stop = useRef<() => void>(() => {});
  /** The aircraft that the last search was for. */
  const searched = useRef<Aircraft | null>(null);

  const clear = useCallback(() => {
    stop.current();
    stop.current = () => {};
    setSearch({ phase: 'idle' });
  }, []);
  useEffect(() => () => stop.current(), []);
  useEffect(() => {
    if (committed !== searched.current) clear();
  }, [committed, clear]);

  const run = useCallback(
    async ({ start, settings, probability }: Request) => {
      stop.current();
      const solve = place.solver();
      if (!solve) return setSearch({ phase: 'failed', sentence: 'The search is still being loaded.' });
      const question = placeProblem(start, settings);
      if ('fault' in question) return setSearch({ phase: 'failed', sentence: question.fault });
      const { problem } = question;
      const { committed: now } = document.api.getState();
      searched.current = now;
      let asked: Asked = { committed: now, start, settings, problem };
      const task = { problem, timeMs: SEARCH_MS };
      let answer: ArrangeAnswer | null = null;
      let live = true;
      const done = (
        rest: Partial<Pick<Extract<Search, { phase: 'done' }>, 'price' | 'reasons' | 'cancelled'>>,
      ) =>
        live &&
        setSearch({ phase: 'done', asked, answer, price: null, reasons: null, cancelled: false, ...rest });
      const end = (cancel: () => void) => {
        stop.current = () => {
          live = false;
          cancel();
        };
      };
      setSearch({ phase: 'running', asked, sinceMs: performance.now(), answer });
      try {
        let price: RobustAnswer | null = null;
        if (probability === null) {
          for (let round = 0; round < MOST_ROUNDS; round++) {
            const searching = solve(
              { task: 'arrange', ...task, problem: eased(asked.problem, round) },
              (progress) => {
                if (!live || !('sentence' in progress)) return;
                answer = progress;
                setSearch((seen) => (seen.phase === 'running' ? { ...seen, asked, answer } : seen));
              },
            );
            end(searching.cancel);
            const found = await searching.answer;
            if (!found) return done({ cancelled: true });
            answer = found;
            if (!found.best) break;
            const real = recheckArrangement(start, asked.problem, found.best, settings.down);
            const asThought = round > 0 || Math.abs(real.marginMm - found.best.marginMm) < SAME_MM;
            if (asThought && real.faults.length === 0) break;
            asked = { ...asked, problem: correctedProblem(start, asked.problem, found.best, settings.down) };
          }
        } else {
          const sigmaMm = largestSigmaMm(start, settings.down);
          const searching = solve({ task: 'surely', ...task, sigmaMm, probability });
          end(searching.cancel);
          price = await searching.answer;
          if (!price) return done({ cancelled: true });
          answer = price.sure;
        }
        done({ price });
        if (answer?.best || probability !== null) return;
        const why = placeLifts(start, settings);
        if ('fault' in why) return;
        const { lifts } = why;
        const asking = solve({ task: 'why not', problem: why.problem, lifts, timeMs: REASONS_MS });
        end(asking.cancel);
        const reasons = await asking.answer;
        if (reasons) done({ price, reasons });
      } catch (error) {
        if (live)
          setSearch({ phase: 'failed', sentence: error instanceof Error ? error.message : String(error) });
      }
    },
    [place, document],
  );

  /** Ends the search and keeps the best so far. */
  const cancel = useCallback(() => {
    stop.current();
    stop.current = () => {};
    setSearch((now) =>
      now.phase === 'running'
        ? { phase: 'done', asked: now.asked, answer: now.answer, price: null, reasons: null, cancelled: true }
        : now,
    );
  }, []);

  return { search, run, cancel, clear };
}
