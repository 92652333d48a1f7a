import type { Advice } from '../model/advice/advise';
import type { Spoken } from '../model/advice/figures';
import type { Aircraft } from '../model/document/types';
import type { Given } from '../model/judgement/judgeFully';

/** To the worker. */
export interface AdviceAsk {
  readonly id: number;
  readonly aircraft: Aircraft;
  readonly given: Given;
  readonly spoken: Spoken;
}

/** From the worker, one for each ask, with its id. */
export type AdviceReply =
  | { readonly id: number; readonly ok: true; readonly advice: Advice }
  | { readonly id: number; readonly ok: false; readonly sentence: string };
