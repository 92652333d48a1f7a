import type { StoreApi } from 'zustand/vanilla';
import { createCalmStore } from './calmStore';

/**
 * The axis that the stage's elevations and the beam share, pixel for pixel. Stage and beam stand in one
 * column, so that a column pixel means the same in both.
 */
export interface Axis {
  /** The coordinate at the column's left edge, mm. */
  readonly atLeftMm: number;
  /** mm for each CSS pixel to the right; negative when the coordinate falls to the right. */
  readonly mmPerPx: number;
}

export const axisToPx = (axis: Axis, mm: number): number => (mm - axis.atLeftMm) / axis.mmPerPx;
export const pxToAxis = (axis: Axis, px: number): number => axis.atLeftMm + px * axis.mmPerPx;

/** The axis that shows lowMm to highMm across a width, with a margin on either side, px. */
export function fitAxis(
  range: { readonly lowMm: number; readonly highMm: number },
  widthPx: number,
  marginPx: number,
  facing: 1 | -1 = 1,
): Axis {
  const mmPerPx = Math.max(range.highMm - range.lowMm, 1) / Math.max(widthPx - 2 * marginPx, 1);
  return facing === 1
    ? { atLeftMm: range.lowMm - marginPx * mmPerPx, mmPerPx }
    : { atLeftMm: range.highMm + marginPx * mmPerPx, mmPerPx: -mmPerPx };
}

/** Zooms about a pixel, which keeps its coordinate. */
export function zoomAxis(axis: Axis, factor: number, aboutPx: number): Axis {
  const mmPerPx = axis.mmPerPx * factor;
  return { atLeftMm: pxToAxis(axis, aboutPx) - aboutPx * mmPerPx, mmPerPx };
}

/** Shifts the picture to the right by a distance, px. */
export const panAxis = (axis: Axis, byPx: number): Axis => ({
  ...axis,
  atLeftMm: axis.atLeftMm - byPx * axis.mmPerPx,
});

/** Both axes, and the coordinate in the middle of the stage's height for each elevation, mm. */
export interface AxisState {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Stations, aft to the right: side and top elevation, and the beam below them. */
  readonly station: Axis;
  /** Buttlines, the right wing to the left: front elevation seen from ahead, and the see-saw below it. */
  readonly lateral: Axis;
  readonly middleMm: { readonly side: number; readonly top: number; readonly front: number };
  /** In top elevation a pixel up is so many times as long as one across: the span of a wide wing has its own scale. */
  readonly spanStretch: number;
  /** So much it would take for all of the span to be in the picture; 1 where it is. */
  readonly wholeSpanStretch: number;
}

export type AxisStore = StoreApi<AxisState>;

export function createAxisStore(): AxisStore {
  return createCalmStore<AxisState>(() => ({
    widthPx: 0,
    heightPx: 0,
    station: { atLeftMm: 0, mmPerPx: 1 },
    lateral: { atLeftMm: 0, mmPerPx: -1 },
    middleMm: { side: 0, top: 0, front: 0 },
    spanStretch: 1,
    wholeSpanStretch: 1,
  }));
}
