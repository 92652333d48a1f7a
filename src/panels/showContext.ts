import { createContext, type ReactNode } from 'react';
import type { Bench } from '../store/bench';

/** What a bench of its own needs to be shown: a stage, and the workers. */
export interface Showing {
  readonly stage: ReactNode;
  start(bench: Bench): void;
}

/** For places that put another bench on the screen. */
export const ShowContext = createContext<Showing | null>(null);
