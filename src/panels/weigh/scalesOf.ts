import { lastOnly } from '../../engine/memory/memory';
import type { Aircraft, WeighIn } from '../../model/document/types';
import { predictedLoads } from '../../model/weigh/predicted';
import { thoughtAt } from '../../model/weigh/thought';
import { weighInById } from '../../model/weigh/weighIns';

type ScalesReading = Extract<WeighIn['reading'], { readonly by: 'scales' }>;

export const scalesOf = (aircraft: Aircraft, id: string): ScalesReading | null => {
  const reading = weighInById(aircraft, id)?.reading;
  return reading?.by === 'scales' ? reading : null;
};

/** What each scale should read by the list, g. */
export const predictedOf = lastOnly((aircraft: Aircraft, id: string): readonly number[] | null => {
  const entry = weighInById(aircraft, id);
  const reading = scalesOf(aircraft, id);
  return entry && reading
    ? predictedLoads(reading.scales, thoughtAt(aircraft, entry).balance, reading.pitchDeg)
    : null;
});
