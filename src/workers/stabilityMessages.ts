import type { StabilityAnswer, StabilityDetail, StabilityInput } from '../model/stability/stability';

/** To the worker. */
export interface StabilityAsk {
  readonly id: number;
  readonly input: StabilityInput;
  readonly detail: StabilityDetail;
}

/** From the worker, one for each ask, with its id. */
export type StabilityReply =
  | { readonly id: number; readonly ok: true; readonly answer: StabilityAnswer }
  | { readonly id: number; readonly ok: false; readonly sentence: string };
