import type { StoreApi } from 'zustand/vanilla';
import type { Vec3 } from '../engine/geometry/types';
import type { Aircraft } from '../model/document/types';
import { eachVariant } from '../model/document/variants';
import type { JudgedVariant } from '../model/judgement/judgedVariant';
import { createCalmStore } from './calmStore';
import type { DocumentStore } from './documentStore';
import type { ViewStore } from './viewStore';

/** Judges every variant elsewhere: in a worker, or in a test by hand. Each is told as soon as it is known. */
export type JudgeVariants = (
  aircraft: Aircraft,
  down: Vec3,
  onJudged: (variant: JudgedVariant) => void,
  signal: AbortSignal,
) => Promise<unknown>;

export interface CompareState {
  /** What is known of each variant, by its id. */
  readonly judged: ReadonlyMap<string, JudgedVariant>;
  /** Why the rest is not, in a sentence; null while nothing went wrong. */
  readonly failed: string | null;
}

/** The variants side by side, judged while somebody looks. */
export interface CompareStore {
  readonly api: StoreApi<CompareState>;
  start(judge: JudgeVariants): void;
  /** Judges now, and again whenever the aircraft is another; until the returned function is called. */
  look(): () => void;
}

const NOTHING: CompareState = { judged: new Map(), failed: null };

export function createCompareStore(document: DocumentStore, view: ViewStore): CompareStore {
  const api = createCalmStore<CompareState>(() => NOTHING);
  let judge: JudgeVariants | null = null;
  let lookers = 0;
  let running: AbortController | null = null;
  /** What was asked last: each variant as an aircraft, so that choosing another one asks for nothing. */
  let asked = '';

  const seek = () => {
    if (!judge || lookers === 0) return;
    const { committed } = document.api.getState();
    const { down } = view.getState();
    const wanted = JSON.stringify([down, eachVariant(committed).map(({ aircraft }) => aloneOf(aircraft))]);
    if (wanted === asked) return;
    asked = wanted;
    running?.abort();
    const control = new AbortController();
    running = control;
    api.setState(NOTHING);
    const take = (variant: JudgedVariant) => {
      if (!control.signal.aborted)
        api.setState({ judged: new Map(api.getState().judged).set(variant.id, variant) });
    };
    judge(committed, down, take, control.signal).catch((error: unknown) => {
      if (control.signal.aborted) return;
      asked = '';
      api.setState({ failed: error instanceof Error ? error.message : String(error) });
    });
  };

  document.api.subscribe((now, before) => {
    if (now.committed !== before.committed) seek();
  });
  return {
    api,
    start: (given) => {
      judge = given;
      seek();
    },
    look: () => {
      lookers += 1;
      seek();
      return () => {
        lookers -= 1;
      };
    },
  };
}

/** An aircraft without what is said of its variants but which of them it is. */
const aloneOf = ({ variants, ...aircraft }: Aircraft) => [variants?.chosenId, aircraft];
