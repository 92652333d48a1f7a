import type { Aircraft, WeighIn } from '../../model/document/types';
import { thoughtAt } from '../../model/weigh/thought';
import { predictedLoads } from '../../model/weigh/weighed';
import { weighInById } from '../../model/weigh/weighIns';

type ScalesReading = Extract<WeighIn['reading'], { readonly by: 'scales' }>;

export const scalesOf = (aircraft: Aircraft, id: string): ScalesReading | null => {
  const reading = weighInById(aircraft, id)?.reading;
  return reading?.by === 'scales' ? reading : null;
};

let kept: { aircraft: Aircraft; id: string; loads: readonly number[] | null } | null = null;

/** What each scale should read by the list, g. */
export function predictedOf(aircraft: Aircraft, id: string): readonly number[] | null {
  if (kept?.aircraft !== aircraft || kept.id !== id) {
    const entry = weighInById(aircraft, id);
    const reading = scalesOf(aircraft, id);
    const loads =
      entry && reading
        ? predictedLoads(reading.scales, thoughtAt(aircraft, entry).balance, reading.pitchDeg)
        : null;
    kept = { aircraft, id, loads };
  }
  return kept.loads;
}
