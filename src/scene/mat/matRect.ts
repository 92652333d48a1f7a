import type { Extent } from '../../interaction/snap';
import type { Rect } from '../airframe/silhouetteShadow';

/** Mat beyond the aircraft on every side, mm. */
const BEYOND_MM = 170;
const STEP_MM = 50;

/** The mat under an aircraft, to whole steps of its grid. */
export function matRect({ minMm, maxMm }: Extent): Rect {
  const low = (mm: number) => Math.floor((mm - BEYOND_MM) / STEP_MM) * STEP_MM;
  const high = (mm: number) => Math.ceil((mm + BEYOND_MM) / STEP_MM) * STEP_MM;
  return [low(minMm[0]), low(minMm[1]), high(maxMm[0]), high(maxMm[1])];
}
