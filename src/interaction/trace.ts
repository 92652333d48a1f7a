import type { ImageHead } from '../model/document/imageHead';
import { most } from '../model/document/schema/limits';
import { LEAST_MM_PER_PX, MOST_MM_PER_PX } from '../model/document/schema/traces';
import type { Trace } from '../model/document/types';
import { type AxisState, axisToPx, pxToAxis } from '../store/axisStore';
import { axisOf, type Elevation, uprightMmPerPx } from './elevation';

/** A place in an elevation, mm in the aircraft's frame: what runs across the picture, and what runs up it. */
export type ViewPlace = readonly [acrossMm: number, uprightMm: number];

/** Where in an elevation a pixel of the stage lies, from its top left. */
export const placeAtPx = (axes: AxisState, view: Elevation, [xPx, yPx]: ViewPlace): ViewPlace => [
  pxToAxis(axisOf(axes, view), xPx),
  axes.middleMm[view] + (axes.heightPx / 2 - yPx) * uprightMmPerPx(axes, view),
];

/** Where on the stage a place of an elevation is seen, px from its top left. */
export const pxOfPlace = (axes: AxisState, view: Elevation, [acrossMm, uprightMm]: ViewPlace): ViewPlace => [
  axisToPx(axisOf(axes, view), acrossMm),
  axes.heightPx / 2 - (uprightMm - axes.middleMm[view]) / uprightMmPerPx(axes, view),
];

/** Seen from ahead the right wing lies to the left: what runs across the picture falls to its right. */
const facing = (view: Elevation): 1 | -1 => (view === 'front' ? -1 : 1);

/** As seen, to the right and up, mm; and the other way round, for it is the same turning. */
export const asSeen = (view: Elevation, [across, upright]: ViewPlace): ViewPlace => [
  across * facing(view),
  upright,
];

const turned = ([x, y]: ViewPlace, deg: number): ViewPlace => {
  const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  return [x * c - y * s, x * s + y * c];
};

/** Where a pixel of the image lies, counted from its upper left corner, right and down. */
export function placeOfPixel(trace: Trace, [u, v]: ViewPlace): ViewPlace {
  const { view, cornerMm, mmPerPx, turnDeg, mirrored } = trace;
  const [x, y] = asSeen(view, cornerMm);
  const [right, up] = turned([(mirrored ? -u : u) * mmPerPx, -v * mmPerPx], turnDeg);
  return asSeen(view, [x + right, y + up]);
}

/** A drawing in its new place, or a sentence that says why it cannot lie there. */
export type Placed = Trace | string;

/** Two places so near together tell nothing, mm. */
const LEAST_APART_MM = 0.1;

const apartMm = ([ax, ay]: ViewPlace, [bx, by]: ViewPlace): number => Math.hypot(bx - ax, by - ay);

/** Scaled about the first of two places, so that they come to lie so far apart, mm. */
export function scaledTrace(trace: Trace, [a, b]: readonly [ViewPlace, ViewPlace], lengthMm: number): Placed {
  if (!(lengthMm > 0)) return 'Expected a length of more than 0.';
  const nowMm = apartMm(a, b);
  if (nowMm < LEAST_APART_MM) return 'Both clicks are in the same place: click the two ends of a length.';
  const factor = lengthMm / nowMm;
  const [x, y] = trace.cornerMm;
  return within({
    ...trace,
    mmPerPx: trace.mmPerPx * factor,
    cornerMm: [a[0] + (x - a[0]) * factor, a[1] + (y - a[1]) * factor],
  });
}

/** Turned about the first of two places, so that the second comes to lie level with it and to its right, as seen. */
export function levelledTrace(trace: Trace, [a, b]: readonly [ViewPlace, ViewPlace]): Placed {
  if (apartMm(a, b) < LEAST_APART_MM) return 'Both clicks are in the same place: click two ends of a line.';
  const { view } = trace;
  const [left, right] = [asSeen(view, a), asSeen(view, b)];
  const byDeg = (-Math.atan2(right[1] - left[1], right[0] - left[0]) * 180) / Math.PI;
  const corner = asSeen(view, trace.cornerMm);
  const [x, y] = turned([corner[0] - left[0], corner[1] - left[1]], byDeg);
  return within({
    ...trace,
    turnDeg: trace.turnDeg + byDeg,
    cornerMm: asSeen(view, [left[0] + x, left[1] + y]),
  });
}

/** Moved by so much across and up, mm. */
export const movedTrace = (trace: Trace, [across, upright]: ViewPlace): Placed =>
  within({ ...trace, cornerMm: [trace.cornerMm[0] + across, trace.cornerMm[1] + upright] });

/** Turned left for right about its own middle. */
export function mirroredTrace(
  trace: Trace,
  { widthPx, heightPx }: Pick<ImageHead, 'widthPx' | 'heightPx'>,
): Placed {
  const [middle] = placeOfPixel(trace, [widthPx / 2, heightPx / 2]);
  return within({
    ...trace,
    mirrored: !trace.mirrored,
    turnDeg: -trace.turnDeg,
    cornerMm: [2 * middle - trace.cornerMm[0], trace.cornerMm[1]],
  });
}

/** Written no finer than anybody sees: a thousandth of a millimetre over any image. */
function within(trace: Trace): Placed {
  const { mmPerPx } = trace;
  if (!(mmPerPx >= LEAST_MM_PER_PX && mmPerPx <= MOST_MM_PER_PX))
    return `That is no scale for a drawing: expected ${LEAST_MM_PER_PX} to ${MOST_MM_PER_PX} mm for each of its pixels, got ${Number(mmPerPx.toPrecision(3))} mm.`;
  const corner = trace.cornerMm.map((mm) => rounded(mm, 1e3));
  if (!corner.every((mm) => Math.abs(mm) <= most.lengthMm))
    return `That is too far away: expected at most ${most.lengthMm / 1000} m from the datum.`;
  const [across = 0, upright = 0] = corner;
  const turnDeg = rounded(trace.turnDeg - 360 * Math.round(trace.turnDeg / 360), 1e5);
  return { ...trace, cornerMm: [across, upright], turnDeg, mmPerPx: Number(mmPerPx.toPrecision(9)) };
}

const rounded = (value: number, parts: number): number => Math.round(value * parts) / parts + 0;
