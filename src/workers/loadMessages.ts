import type { Vec3 } from '../engine/geometry/types';
import type { Aircraft } from '../model/document/types';
import type { LoadEnvelope } from '../model/loads/loadStates';

/** To the worker. */
export interface LoadAsk {
  readonly id: number;
  readonly aircraft: Aircraft;
  readonly down: Vec3;
}

/** From the worker, one for each ask, with its id. */
export type LoadReply =
  | { readonly id: number; readonly ok: true; readonly envelope: LoadEnvelope | null }
  | { readonly id: number; readonly ok: false; readonly sentence: string };
