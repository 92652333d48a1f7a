import type { Vec3 } from '../engine/geometry/types';
import type { Aircraft } from '../model/document/types';
import type { JudgedVariant } from '../model/judgement/judgedVariant';

/** What the worker for variants is asked; each is told as soon as it is judged. */
export interface VariantTask {
  /** With all its variants. */
  readonly aircraft: Aircraft;
  readonly down: Vec3;
}

export type VariantProgress = JudgedVariant;
