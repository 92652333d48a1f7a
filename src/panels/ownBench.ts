import { createContext, type ReactNode } from 'react';
import type { Bench } from '../store/bench';

/** What a place needs to show a bench of its own; the composition root hands it in. */
export interface OwnBench {
  readonly stage: ReactNode;
  /** Gives a bench what is too slow for a frame; returns how to take it away. */
  start(bench: Bench): () => void;
}

export const OwnBenchContext = createContext<OwnBench | null>(null);
