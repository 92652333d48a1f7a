import { type Axis, axisToPx } from '../../store/axisStore';

/** How the travel is drawn: a stretch of the axis enlarged about its middle. */
export interface TravelScale {
  readonly middleMm: number;
  /** The middle of the stretch in the drawing, px. */
  readonly middlePx: number;
  /** mm for each px; negative where the coordinate falls to the right. */
  readonly mmPerPx: number;
  /** How many times larger than on the beam; 1 when both stand in one column. */
  readonly factor: number;
}

export const travelPx = ({ middleMm, middlePx, mmPerPx }: TravelScale, mm: number): number =>
  middlePx + (mm - middleMm) / mmPerPx;

/** A travel is never looked at more closely than this, mm across. */
const LEAST_STRETCH_MM = 4;
/** Limits so many times the travel's length away are still shown. */
const NEAR = 3;

/**
 * The stretch that shows the travel and what it is held against: the whole travel, the limits near it, and
 * the nearest limit however far.
 */
export function travelStretch(
  travelMm: readonly number[],
  limitsMm: readonly number[],
): { readonly lowMm: number; readonly highMm: number } {
  const [low, high] = [Math.min(...travelMm), Math.max(...travelMm)];
  const off = (mm: number) => Math.max(low - mm, mm - high, 0);
  const reachMm = Math.max(high - low, LEAST_STRETCH_MM) * NEAR;
  const nearest = Math.min(...limitsMm.map(off));
  const shown = limitsMm.filter((mm) => off(mm) <= Math.max(reachMm, nearest));
  return { lowMm: Math.min(low, ...shown), highMm: Math.max(high, ...shown) };
}

/** Round enlargements, so that the scale keeps still while the aircraft is worked on. */
const factors = [500, 200, 100, 50, 20, 10, 5, 3, 2];

/** The largest round enlargement at which a stretch fits between two columns; the beam's own scale when none does. */
export function travelScale(
  axis: Axis,
  { lowMm, highMm }: { readonly lowMm: number; readonly highMm: number },
  fromPx: number,
  toPx: number,
): TravelScale {
  const stretchMm = Math.max(highMm - lowMm, LEAST_STRETCH_MM);
  const middleMm = (lowMm + highMm) / 2;
  const trulyPx = stretchMm / Math.abs(axis.mmPerPx);
  const factor = factors.find((times) => times * trulyPx <= (toPx - fromPx) * 0.86);
  return factor === undefined
    ? { middleMm, middlePx: axisToPx(axis, middleMm), mmPerPx: axis.mmPerPx, factor: 1 }
    : { middleMm, middlePx: (fromPx + toPx) / 2, mmPerPx: axis.mmPerPx / factor, factor };
}

/** Whether a stretch lies between two columns of a drawing at a scale. */
export function isInView(
  scale: TravelScale,
  { lowMm, highMm }: { readonly lowMm: number; readonly highMm: number },
  fromPx: number,
  toPx: number,
): boolean {
  return [lowMm, highMm].every((mm) => {
    const px = travelPx(scale, mm);
    return px >= fromPx && px <= toPx;
  });
}
