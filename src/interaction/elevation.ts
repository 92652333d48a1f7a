import { type Axis, type AxisState, fitAxis, panAxis, pxToAxis, zoomAxis } from '../store/axisStore';
import type { Gaze } from '../store/eye';
import type { View } from '../store/viewStore';
import type { Extent } from './snap';

/** A view that looks square along one of the aircraft's axes. */
export type Elevation = Exclude<View, 'free'>;

/** What an elevation shows: how far across and how far up and down, mm. */
interface Span {
  readonly across: readonly [number, number];
  readonly upright: readonly [number, number];
}

/** Which of station, buttline and waterline runs across the picture and which runs up it. */
export const acrossAxis = (view: Elevation): 0 | 1 => (view === 'front' ? 1 : 0);
export const uprightAxis = (view: Elevation): 1 | 2 => (view === 'top' ? 1 : 2);

/** Room above and below the aircraft, px: for the view's buttons, and for the rule's figures over the stage's bar. */
const abovePx = (heightPx: number) => Math.min(72, heightPx * 0.28);
// On a low stage the rule lies beside the bar rather than over it.
const belowPx = (heightPx: number) => Math.min(104, heightPx * 0.24 + Math.max(0, heightPx - 250) * 0.14);

const spanOf = (extent: Extent, view: Elevation): Span => ({
  across: [extent.minMm[acrossAxis(view)], extent.maxMm[acrossAxis(view)]],
  upright: [extent.minMm[uprightAxis(view)], extent.maxMm[uprightAxis(view)]],
});

/** Widens an axis about the middle of its picture until it shows at least so many mm to the pixel. */
function noFiner(axis: Axis, widthPx: number, mmPerPx: number): Axis {
  const factor = mmPerPx / Math.abs(axis.mmPerPx);
  return factor > 1 ? zoomAxis(axis, factor, widthPx / 2) : axis;
}

/** The target band is never drawn narrower in top elevation, px, as long as the length still fits. */
const LEAST_BAND_PX = 6;

/** mm up the picture for a pixel of an elevation. */
export const uprightMmPerPx = (axes: AxisState, view: Elevation): number =>
  Math.abs(axisOf(axes, view).mmPerPx) * (view === 'top' ? axes.spanStretch : 1);

/** What a fit goes by besides the aircraft's box and the picture's. */
interface FitWish {
  /** The target band's length, if there is one, mm. */
  readonly bandMm?: number | null;
  /** All of a wide wing is to be seen from above, in a scale of its own. */
  readonly wholeSpan?: boolean;
}

/**
 * The axes that show all of an aircraft in a view, the same scale across as up. The free view has the
 * beam's axis only: stations fitted to the width. From above a wing may be so wide that the band would shrink to a
 * hairline: then the length is fitted and the tips lie beyond the picture, or, if the whole span is asked for, it gets a
 * scale of its own, no other than it takes.
 */
export function fitElevation(
  extent: Extent,
  view: View,
  { widthPx, heightPx }: Pick<AxisState, 'widthPx' | 'heightPx'>,
  { bandMm = null, wholeSpan = false }: FitWish = {},
): Omit<AxisState, 'widthPx' | 'heightPx'> {
  const marginPx = Math.min(56, Math.max(20, widthPx * 0.05));
  const [above, below] = [abovePx(heightPx), belowPx(heightPx)];
  const tall = Math.max(heightPx - above - below, 1);
  const fit = (elevation: Elevation, bounded: boolean): Axis => {
    const { across, upright } = spanOf(extent, elevation);
    const range = { lowMm: across[0], highMm: across[1] };
    const axis = fitAxis(range, widthPx, marginPx, elevation === 'front' ? -1 : 1);
    return bounded ? noFiner(axis, widthPx, (upright[1] - upright[0]) / tall) : axis;
  };
  const plain = fit(view === 'top' ? 'top' : 'side', view === 'side' || view === 'top');
  const closest = fit('top', false);
  const wanted = bandMm === null ? plain.mmPerPx : Math.max(closest.mmPerPx, bandMm / LEAST_BAND_PX);
  const station = view === 'top' && wanted < plain.mmPerPx ? noFiner(closest, widthPx, wanted) : plain;
  const wholeSpanStretch = plain.mmPerPx / station.mmPerPx;
  const spanStretch = wholeSpan ? wholeSpanStretch : 1;
  const lateral = fit('front', view === 'front');
  const middle = (elevation: Elevation, axis: Axis) => {
    const [low, high] = spanOf(extent, elevation).upright;
    const scale = Math.abs(axis.mmPerPx) * (elevation === 'top' ? spanStretch : 1);
    return (low + high) / 2 + ((above - below) / 2) * scale;
  };
  return {
    station,
    lateral,
    middleMm: { side: middle('side', station), top: middle('top', station), front: middle('front', lateral) },
    spanStretch,
    wholeSpanStretch,
  };
}

/** The axis that runs across an elevation. */
export const axisOf = (axes: AxisState, view: Elevation): Axis =>
  view === 'front' ? axes.lateral : axes.station;

const withAxis = (axes: AxisState, view: Elevation, axis: Axis, middleMm: number): Partial<AxisState> => ({
  ...(view === 'front' ? { lateral: axis } : { station: axis }),
  middleMm: { ...axes.middleMm, [view]: middleMm },
});

/** Finest and coarsest scale, mm to the pixel. */
const FINEST = 0.05;
const COARSEST = 20;

/** Zooms an elevation by a factor (more than 1 shows more) about a pixel, which keeps its place. */
export function zoomElevation(
  axes: AxisState,
  view: Elevation,
  factor: number,
  [xPx, yPx]: readonly [number, number],
): Partial<AxisState> {
  const axis = axisOf(axes, view);
  const scale = Math.abs(axis.mmPerPx);
  const by = Math.min(COARSEST, Math.max(FINEST, scale * factor)) / scale;
  const abovePx = axes.heightPx / 2 - yPx;
  const middleMm = axes.middleMm[view] + abovePx * uprightMmPerPx(axes, view) * (1 - by);
  return withAxis(axes, view, zoomAxis(axis, by, xPx), middleMm);
}

/** Shifts an elevation's picture right and down, px. */
export function panElevation(
  axes: AxisState,
  view: Elevation,
  [rightPx, downPx]: readonly [number, number],
): Partial<AxisState> {
  const axis = axisOf(axes, view);
  const middleMm = axes.middleMm[view] + downPx * uprightMmPerPx(axes, view);
  return withAxis(axes, view, panAxis(axis, rightPx), middleMm);
}

/** What an elevation shows, for a picture of any size. */
export function gazeOfElevation(axes: AxisState, view: Elevation): Gaze {
  const axis = axisOf(axes, view);
  const atMm: [number, number, number] = [0, 0, 0];
  atMm[acrossAxis(view)] = pxToAxis(axis, axes.widthPx / 2);
  atMm[uprightAxis(view)] = axes.middleMm[view];
  return {
    atMm,
    wideMm: axes.widthPx * Math.abs(axis.mmPerPx),
    highMm: axes.heightPx * uprightMmPerPx(axes, view),
  };
}

/** The axes with all of that in the picture. */
export function elevationOfGaze(
  axes: AxisState,
  view: Elevation,
  { atMm, wideMm, highMm }: Gaze,
): Partial<AxisState> {
  const axis = axisOf(axes, view);
  const stretch = view === 'top' ? axes.spanStretch : 1;
  const needed = Math.max(wideMm / axes.widthPx, highMm / axes.heightPx / stretch);
  const mmPerPx = Math.sign(axis.mmPerPx) * Math.min(COARSEST, Math.max(FINEST, needed));
  const atLeftMm = atMm[acrossAxis(view)] - (axes.widthPx / 2) * mmPerPx;
  return withAxis(axes, view, { atLeftMm, mmPerPx }, atMm[uprightAxis(view)]);
}
