import type { StabilityDetail, StabilityInput } from '../model/stability/stability';

/** What the worker for the neutral point is asked. */
export interface StabilityTask {
  readonly input: StabilityInput;
  readonly detail: StabilityDetail;
}
