import type { StoreApi } from 'zustand/vanilla';
import type { Stretch, Vec3 } from '../engine/geometry/types';
import { holdsIn } from '../model/airframe/aboard';
import type { Aircraft } from '../model/document/types';
import type { Entry } from '../model/fit/entryThroughAny';
import type { FittingOrder } from '../model/fit/fittingOrder';
import type { FitProblem, WholeFit } from '../model/fit/wholeFit';
import { createCalmStore } from './calmStore';
import type { DocumentStore } from './documentStore';
import type { ViewStore } from './viewStore';

/** Searches elsewhere: in a worker, or in a test by hand. A search that is overtaken by another gives null. */
export interface FitSearch {
  entry(aircraft: Aircraft, itemId: string): Promise<Entry | null>;
  order(aircraft: Aircraft): Promise<FittingOrder | null>;
  /** Judges the whole aircraft, whatever else is being searched for. */
  whole(aircraft: Aircraft): Promise<readonly FitProblem[]>;
  /** Gives up what is being searched for. */
  stop(): void;
}

/** What comes after the first paint: the judgement of the whole aircraft's fit, and places that stand it. */
export interface FitJudge {
  wholeFit(aircraft: Aircraft): WholeFit;
  /** Whether that costs no more than a few frames. */
  isSoonJudged(aircraft: Aircraft): boolean;
  /** Takes what was found elsewhere of this very aircraft. */
  takeJudged(aircraft: Aircraft, problems: readonly FitProblem[]): void;
  /** The move that ends a problem and makes nothing worse, mm; null when none was found. */
  clearMove(aircraft: Aircraft, itemId: string, problem: FitProblem): Vec3 | null;
  /** The station nearest to the wanted one, in some stretches, where the item has room; null when none was found. */
  nearestRoom(
    aircraft: Aircraft,
    itemId: string,
    stretches: readonly Stretch[],
    wantedMm: number,
  ): number | null;
  /** The worst problem of an item in a few words, for its row. */
  shortWords(problem: FitProblem, id: string): string;
}

/** How an item is marked: wrong in the load state shown, or only in another one; `bad` cannot be built so. */
export interface FitMark {
  readonly severity: FitProblem['severity'];
  readonly now: boolean;
}

export interface FitState {
  /** Bays and hatches are being edited, so they show whatever is selected. */
  readonly roomsShown: boolean;
  /** A part is shown on its way in; what it passes is no clash. */
  readonly playing: boolean;
  /** The judge is there. */
  readonly judged: boolean;
}

export interface FitStore {
  readonly api: StoreApi<FitState>;
  get(): FitState;
  subscribe(listener: () => void): () => void;
  /** Null until the searches can be run. */
  search(): FitSearch | null;
  start(search: FitSearch): void;
  judge(): FitJudge | null;
  startJudge(judge: FitJudge): void;
  /**
   * Everything that does not fit of what is on the bench now, drag and all; of a part shown on its way in, as it
   * stands when it is in. Null before the judge is there, and while many items are being judged in a worker. The very
   * same for the same aircraft.
   */
  whole(): WholeFit | null;
  /** What is wrong with a part, tank or piece of structure by its id in the file, the worst first. */
  problemsOf(id: string): readonly FitProblem[];
  /** How it is to be marked; null when it fits. */
  mark(id: string): FitMark | null;
  /** The name of what it runs into worst in the load state shown; empty where it runs into nothing. */
  clashName(id: string): string;
}

const clashKinds: readonly FitProblem['kind'][] = ['overlap', 'within'];
const FITS: readonly FitProblem[] = [];

export function createFitStore(document: DocumentStore, view: ViewStore): FitStore {
  const api = createCalmStore<FitState>(() => ({ roomsShown: false, playing: false, judged: false }));
  let given: FitSearch | null = null;
  let judge: FitJudge | null = null;
  const aircraft = () => (api.getState().playing ? document.api.getState().committed : document.current());
  /** What was found last; null where it is being looked for. */
  let last: { readonly of: Aircraft; readonly fit: WholeFit | null } | null = null;
  let elsewhere = false;
  /** What no worker would judge: it is judged here, whatever it costs. */
  let refused: Aircraft | null = null;

  const whole = () => {
    if (!judge) return null;
    const of = aircraft();
    if (last?.of !== of) last = { of, fit: judgedBy(judge, of) };
    return last.fit;
  };
  const judgedBy = (by: FitJudge, of: Aircraft): WholeFit | null => {
    if (!given || refused === of || by.isSoonJudged(of)) return by.wholeFit(of);
    if (!elsewhere) void judgeElsewhere(by, given, of);
    return null;
  };
  const judgeElsewhere = async (by: FitJudge, search: FitSearch, of: Aircraft) => {
    elsewhere = true;
    await search.whole(of).then(
      (problems) => by.takeJudged(of, problems),
      () => {
        refused = of;
      },
    );
    elsewhere = false;
    last = null;
    api.setState({});
  };
  const problemsOf = (id: string) => whole()?.byId.get(id) ?? FITS;
  const isNow = ({ states }: FitProblem) => holdsIn(states, aircraft(), view.getState().positions);
  return {
    api,
    get: api.getState,
    subscribe: (listener) => api.subscribe(listener),
    search: () => given,
    start: (search) => {
      given = search;
    },
    judge: () => judge,
    startJudge: (ready) => {
      judge = ready;
      api.setState({ judged: true });
    },
    whole,
    problemsOf,
    clashName: (id) => {
      const clash = problemsOf(id).find((problem) => clashKinds.includes(problem.kind) && isNow(problem));
      return clash?.parties.find((party) => party.id !== id)?.name ?? '';
    },
    mark: (id) => {
      const problems = problemsOf(id);
      const worst = problems.find(isNow) ?? problems[0];
      return worst ? { severity: worst.severity, now: isNow(worst) } : null;
    },
  };
}
