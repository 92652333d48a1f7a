import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { useAircraft, useBench, useView } from '../../store/react';
import { setAttribute, setText } from '../drawing';
import { QuarteredDisc } from '../icons';
import { useBenchValue } from '../Live';
import { useReadings } from '../readings';
import { useDrawn } from '../useDrawn';
import { type Line, pathThrough } from './lines';
import { type Rows, rowsOf } from './rows';
import { Spread } from './Spread';
import { stabilityShown } from './stabilityLayer';
import { TravelBand } from './TravelBand';
import { TravelMac } from './TravelMac';
import { type TravelScale, travelPx } from './travelScale';
import { momentWords } from './travelWords';
import { fromPx, toPx, useTravelScale } from './useTravelScale';

/** Fuel remaining runs downward: full at the top, dry at the foot. */
const fractionToY = (fraction: number, rows: Rows) =>
  rows.travelTop + (1 - fraction) * (rows.travelFoot - rows.travelTop);

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

interface TravelProps {
  readonly line: Line;
  readonly widthPx: number;
}

/** The path of the CG from full to dry against the band, as large as it can be drawn, with the disc that scrubs the burn. */
export function Travel({ line, widthPx }: TravelProps) {
  const bench = useBench();
  const say = useReadings();
  const rows = useView(rowsOf);
  const stability = useView(stabilityShown) && line.axis === 0;
  const scaleOf = useTravelScale(line);
  const curve = useRef<SVGPathElement>(null);
  const ahead = useRef<SVGPathElement>(null);
  const ends = useRef<SVGPathElement>(null);
  const ghost = useRef<SVGPathElement>(null);
  const handle = useRef<SVGGElement>(null);
  const reading = useRef<SVGTextElement>(null);
  const reservePct = useAircraft((aircraft) => aircraft.fuel?.reservePct ?? 0);
  const percent = useBenchValue(({ view }) => Math.round(view.getState().fuelFraction * 100));
  const factor = useBenchValue((live) => scaleOf(live).factor);
  const y = (fraction: number) => fractionToY(fraction, rows);
  const x = (scale: TravelScale, mm: number) => travelPx(scale, mm);

  useDrawn(() => {
    const { travel, cgMm } = bench.balance.get();
    const { fuelFraction, playing } = bench.view.getState();
    const scale = scaleOf(bench);
    const points = travel.map((point) => [x(scale, point.cgMm[line.axis]), y(point.fuelFraction)] as const);
    const whole = pathThrough(points.map((point) => point.join(' ')));
    // While the burn plays the curve draws itself, over a faint one of where it goes.
    const burnt = playing && cgMm ? travel.filter((point) => point.fuelFraction > fuelFraction) : null;
    const drawn = burnt?.map((point) => `${x(scale, point.cgMm[line.axis])} ${y(point.fuelFraction)}`);
    const disc = cgMm ? `${x(scale, cgMm[line.axis])} ${y(fuelFraction)}` : '';
    setAttribute(curve.current, 'd', drawn ? pathThrough([...drawn, disc]) : whole);
    setAttribute(ahead.current, 'd', drawn ? whole : '');
    const other = bench.place.get().ghost?.travel ?? [];
    const path = other.map((point) => `${x(scale, point.cgMm[line.axis])} ${y(point.fuelFraction)}`);
    // A travel of one point is a dot.
    setAttribute(ghost.current, 'd', path.length === 1 ? `M${path[0]}h0` : pathThrough(path));
    // A round cap makes each end a dot.
    setAttribute(
      ends.current,
      'd',
      [points[0], points.at(-1)].map((end) => end && `M${end.join(' ')}h0`).join(''),
    );
    if (!cgMm) return;
    const [discX, discY] = [x(scale, cgMm[line.axis]), y(fuelFraction)];
    setAttribute(handle.current, 'transform', `translate(${discX} ${discY})`);
    const text = momentWords(bench, say, line);
    if (!bench.document.api.getState().preview) setAttribute(handle.current, 'aria-valuetext', text);
    if (!reading.current) return;
    const [first, last] = [points[0] ?? [0, 0], points.at(-1) ?? [0, 0]];
    const fallsRight = (last[0] - first[0]) * (last[1] - first[1]) >= 0;
    const room = {
      discPx: [discX, discY],
      widthPx: text.length * CHARACTER_PX,
      endPx: toPx(widthPx),
      fallsRight,
    } as const;
    const at = readingPlace(room, rows);
    setText(reading.current, text);
    setAttribute(reading.current, 'x', String(at.xPx));
    setAttribute(reading.current, 'y', String(stability ? Math.max(at.yPx, rows.travelTop + 22) : at.yPx));
  });

  const burnTo = (fraction: number) =>
    bench.view.setState({ fuelFraction: Math.min(1, Math.max(0, fraction)), playing: false });
  const scrub = (event: PointerEvent<SVGSVGElement>) => {
    const atPx = event.clientY - event.currentTarget.getBoundingClientRect().top;
    burnTo(1 - (atPx - rows.travelTop) / (rows.travelFoot - rows.travelTop));
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing is no fieldset
    <svg
      className="travel"
      role="group"
      aria-label="CG travel"
      width="100%"
      height={rows.travelHeight}
      style={{ top: rows.strip }}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        scrub(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) scrub(event);
      }}
    >
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group in a drawing takes no focus */}
      <g aria-hidden="true">
        <TravelBand line={line} scaleOf={scaleOf} />
        {stability && <TravelMac widthPx={widthPx} scaleOf={scaleOf} />}
        <g className="travel-lines">
          <path
            d={`M${fromPx - 8} ${rows.travelTop}H${toPx(widthPx)}M${fromPx - 8} ${rows.travelFoot}H${toPx(widthPx)}`}
          />
          <text x="14" y={rows.travelTop + 4}>
            full
          </text>
          <text x="14" y={rows.travelFoot + 4}>
            dry
          </text>
          {reservePct > 0 && (
            <path className="reserve" d={`M${fromPx - 8} ${y(reservePct / 100)}H${toPx(widthPx)}`}>
              <title>The reserve begins here</title>
            </path>
          )}
          <text x={toPx(widthPx)} y={rows.travelFoot - 6} textAnchor="end" className="travel-scale">
            {factor > 1 ? `×${factor}` : ''}
          </text>
        </g>
        <Spread line={line} x={(mm) => travelPx(scaleOf(bench), mm)} y={y} />
        <path ref={ahead} className="travel-ahead" />
        <path ref={ghost} className="travel-ghost" data-testid="ghost-travel" />
        <path ref={curve} className="travel-curve" />
        <path ref={ends} className="travel-ends" />
      </g>
      <g
        ref={handle}
        className="travel-handle"
        role="slider"
        tabIndex={0}
        aria-label="Fuel remaining"
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={percent}
        onKeyDown={(event) => {
          const by = stepOf(event);
          if (by === null) return;
          event.preventDefault();
          burnTo((percent + by) / 100);
        }}
      >
        <circle r="22" className="handle-reach" />
        <g transform="scale(10)">
          <QuarteredDisc />
        </g>
      </g>
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group in a drawing takes no focus */}
      <text ref={reading} className="travel-label figure" aria-hidden="true" />
    </svg>
  );
}

/** By how much a key changes the fuel that is left, % of it all. */
function stepOf({ key }: KeyboardEvent): number | null {
  const steps: Readonly<Record<string, number>> = {
    ArrowUp: 1,
    ArrowRight: 1,
    ArrowDown: -1,
    ArrowLeft: -1,
    PageUp: 10,
    PageDown: -10,
    Home: -100,
    End: 100,
  };
  return steps[key] ?? null;
}
