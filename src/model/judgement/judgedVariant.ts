import type { Vec3 } from '../../engine/geometry/types';
import type { Tensor } from '../../engine/mass/types';
import { balanceAt } from '../balance/balance';
import type { Aircraft } from '../document/types';
import { estimateStability } from '../stability/estimateStability';
import { stabilityInput } from '../stability/stability';
import { judgeFully } from './judgeFully';
import type { Judgement } from './types';
import { withPower } from './withPower';

/** One variant, judged as the aircraft that it is. mm, g, g·mm²; as it starts a flight, full. */
export interface JudgedVariant {
  readonly id: string;
  readonly judgement: Judgement;
  readonly massG: number;
  /** About the CG; products are tensor elements, xy = −∫xy dm. */
  readonly inertiaAboutCgGmm2: Tensor;
}

/** The whole judgement, load states, fit, wiring and the fine estimate of the neutral point with it. Up to seconds: for a worker. */
export function judgedVariant(id: string, aircraft: Aircraft, down: Vec3): JudgedVariant {
  const answer = estimateStability(stabilityInput(aircraft), 'fine');
  const failed = answer !== null && 'fault' in answer;
  const estimate = failed ? null : answer;
  const { massG, inertiaAboutCgGmm2 } = balanceAt(aircraft, { fuelFraction: 1, down, estimate });
  const balanced = judgeFully(aircraft, { down, estimate, estimating: failed ? 'failed' : 'done' });
  return { id, judgement: withPower(aircraft, balanced), massG, inertiaAboutCgGmm2 };
}
