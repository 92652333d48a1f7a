import type { ReferencePoint } from '../model/document/types';
import type { Estimating } from '../model/judgement/types';
import type { BenchAttitude } from '../model/loads/attitude';
import type { UnitSystem } from '../model/units';

export interface TableOptions {
  readonly fuelFraction: number;
  readonly attitude: BenchAttitude;
  readonly system: UnitSystem;
  /** Places are shown from here; null is the datum. */
  readonly from: ReferencePoint | null;
  /** Whether the estimate of the neutral point came to anything; it did when this is left out. */
  readonly estimating?: Estimating;
}
