import { useRef } from 'react';
import type { TravelPoint } from '../../engine/balance/travel';
import type { Vec3 } from '../../engine/geometry/types';
import type { Bench } from '../../store/bench';
import { useBench, useView } from '../../store/react';
import { setAttribute, setText } from '../drawing';
import { discPaths } from '../icons';
import { useReadings } from '../readings';
import { useDrawn } from '../useDrawn';
import { type Line, pathThrough } from './lines';
import { outlineOf } from './outlineOf';
import { type Rows, rowsOf } from './rows';
import { stabilityShown } from './stabilityLayer';
import { type TravelScale, travelPx } from './travelScale';
import { momentWords } from './travelWords';
import { fromPx, toPx } from './useTravelScale';

/** A character of the reading, whose figures are all of one width; measuring would lay the page out again. */
const CHARACTER_PX = 7.6;
/** From the middle of the disc to its reading, px. */
const OFF_PX = 18;

interface ReadingRoom {
  readonly discPx: readonly [x: number, y: number];
  readonly widthPx: number;
  readonly endPx: number;
  /** The curve runs to the right on its way down. */
  readonly fallsRight: boolean;
}

/** Where the reading begins, beside the disc where the curve does not run: right of it, else left, else under it. */
function readingPlace({ discPx: [x, y], widthPx, endPx, fallsRight }: ReadingRoom, rows: Rows) {
  const above = Math.max(y - 4, 11);
  const below = Math.min(y + 14, rows.travelFoot);
  const [right, left] = [x + OFF_PX, x - OFF_PX - widthPx];
  if (right + widthPx <= endPx) return { xPx: right, yPx: fallsRight ? above : below };
  if (left >= fromPx) return { xPx: left, yPx: fallsRight ? below : above };
  return {
    xPx: Math.max(4, Math.min(x - widthPx / 2, endPx - widthPx)),
    yPx: Math.min(y + 30, rows.travelFoot - 8),
  };
}

/** As much of the reading as has room beside the disc: the time goes first, then what is left; where the CG is stays. */
function longestBeside(text: string, roomFor: (words: string) => ReadingRoom): string {
  const pieces = text.split(' · ');
  for (let count = pieces.length; count > 1; count -= 1) {
    const words = pieces.slice(0, count).join(' · ');
    const { discPx, widthPx, endPx } = roomFor(words);
    if (discPx[0] + OFF_PX + widthPx <= endPx || discPx[0] - OFF_PX - widthPx >= fromPx) return words;
  }
  return pieces[0] ?? text;
}

/** Fuel remaining runs downward: full at the top, dry at the foot. */
export const fractionToY = (fraction: number, rows: Rows) =>
  rows.travelTop + (1 - fraction) * (rows.travelFoot - rows.travelTop);

type Column = readonly [xPx: number, yPx: number];
type Columns = (travel: readonly TravelPoint[]) => Column[];
const written = ([xPx, yPx]: Column) => `${xPx} ${yPx}`;

const outline = outlineOf(discPaths.outline);
const quarters = outlineOf(discPaths.quarters);
const DISC_RADIUS_PX = 10;

/** The disc by which the burn is scrubbed: what a press finds of it, its ground, quarters and ring. */
function placeDisc(handle: SVGGElement | null, [xPx, yPx]: Column): void {
  const [reach, ground, dark, ring] = handle?.children ?? [];
  setAttribute(reach, 'cx', String(xPx));
  setAttribute(reach, 'cy', String(yPx));
  for (const round of [ground, ring]) setAttribute(round, 'd', outline(xPx, yPx, DISC_RADIUS_PX));
  setAttribute(dark, 'd', quarters(xPx, yPx, DISC_RADIUS_PX));
}

/** The drawing of the travel: its elements are made by React and written here, so that a drag renders nothing. */
export function useTravelPicture(line: Line, widthPx: number, scaleOf: (bench: Bench) => TravelScale) {
  const bench = useBench();
  const say = useReadings();
  const rows = useView(rowsOf);
  const stability = useView(stabilityShown) && line.axis === 0;
  const curve = useRef<SVGPathElement>(null);
  const ahead = useRef<SVGPathElement>(null);
  const ends = useRef<SVGPathElement>(null);
  const ghost = useRef<SVGPathElement>(null);
  const handle = useRef<SVGGElement>(null);
  const reading = useRef<SVGTextElement>(null);

  const drawCurve = (points: readonly Column[], disc: Column | null, columns: Columns) => {
    const { fuelFraction, playing } = bench.view.getState();
    const whole = pathThrough(points.map(written));
    // While the burn plays the curve draws itself, over a faint one of where it goes.
    const burnt =
      playing && disc
        ? columns(bench.balance.get().travel.filter((point) => point.fuelFraction > fuelFraction))
        : null;
    setAttribute(curve.current, 'd', burnt && disc ? pathThrough([...burnt, disc].map(written)) : whole);
    setAttribute(ahead.current, 'd', burnt ? whole : '');
    // A round cap makes each end a dot.
    const dots = [points[0], points.at(-1)].map((end) => end && `M${written(end)}h0`);
    setAttribute(ends.current, 'd', dots.join(''));
  };
  const drawGhost = (columns: Columns) => {
    const path = columns(bench.place.get().ghost?.travel ?? []).map(written);
    // A travel of one point is a dot.
    setAttribute(ghost.current, 'd', path.length === 1 ? `M${path[0]}h0` : pathThrough(path));
  };
  const writeReading = (points: readonly Column[], disc: Column) => {
    placeDisc(handle.current, disc);
    const text = momentWords(bench, say, line);
    if (!bench.document.api.getState().preview) setAttribute(handle.current, 'aria-valuetext', text);
    if (!reading.current) return;
    const [first, last] = [points[0] ?? [0, 0], points.at(-1) ?? [0, 0]];
    const roomFor = (words: string): ReadingRoom => ({
      discPx: disc,
      widthPx: words.length * CHARACTER_PX,
      endPx: toPx(widthPx),
      fallsRight: (last[0] - first[0]) * (last[1] - first[1]) >= 0,
    });
    const shown = longestBeside(text, roomFor);
    const at = readingPlace(roomFor(shown), rows);
    setText(reading.current, shown);
    setAttribute(reading.current, 'x', String(at.xPx));
    setAttribute(reading.current, 'y', String(stability ? Math.max(at.yPx, rows.travelTop + 22) : at.yPx));
  };

  useDrawn(() => {
    const { travel, cgMm } = bench.balance.get();
    const { fuelFraction } = bench.view.getState();
    const scale = scaleOf(bench);
    const column = (at: { readonly cgMm: Vec3; readonly fuelFraction: number }): Column => [
      travelPx(scale, at.cgMm[line.axis]),
      fractionToY(at.fuelFraction, rows),
    ];
    const columns: Columns = (along) => along.map(column);
    const points = columns(travel);
    const disc = cgMm && column({ cgMm, fuelFraction });
    drawCurve(points, disc, columns);
    drawGhost(columns);
    if (disc) writeReading(points, disc);
  });
  return { curve, ahead, ends, ghost, handle, reading };
}
