import type { Vec3 } from '../engine/geometry/types';
import type { Aircraft } from '../model/document/types';

/** What the worker for the load states is asked. */
export interface LoadTask {
  readonly aircraft: Aircraft;
  readonly down: Vec3;
}
