import { createContext, type ReactNode } from 'react';

/** The stage, which the composition root hands in, for a place that has a bench of its own to show on one. */
export const StageContext = createContext<ReactNode>(null);
