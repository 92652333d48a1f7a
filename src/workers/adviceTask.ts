import type { Spoken } from '../model/advice/figures';
import type { Aircraft } from '../model/document/types';
import type { Given } from '../model/judgement/judgeFully';

/** What the worker for remedies is asked. */
export interface AdviceTask {
  readonly aircraft: Aircraft;
  readonly given: Given;
  readonly spoken: Spoken;
}
