import type { ComponentType } from 'react';

/** Why the stage shows no picture. */
export type StageFailure =
  /** The browser gives no WebGL. */
  | { readonly why: 'no graphics' }
  /** The graphics were taken away; they may come back by themselves. */
  | { readonly why: 'graphics lost' }
  | { readonly why: 'fault'; readonly error: unknown };

export interface StageTroubleProps {
  readonly failure: StageFailure;
  /** Draws the picture again. */
  readonly onRetry: () => void;
}

/** Says in words what is wrong; handed in from outside, for words are no part of the scene. */
export type StageTroubleView = ComponentType<StageTroubleProps>;
