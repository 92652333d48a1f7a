import { type PointerEvent, useRef } from 'react';
import { formatTime } from '../../model/units';
import { type Axis, axisToPx } from '../../store/axisStore';
import type { Bench } from '../../store/bench';
import { useAircraft, useAxis, useBench } from '../../store/react';
import { burnClock, timeOfFraction } from '../burn/burnClock';
import { QuarteredDisc } from '../icons';
import { useBenchValue } from '../Live';
import { type Readings, useReadings } from '../readings';
import { useDrawn } from '../useDrawn';
import { DETAIL_PX, Detail, LEAST_DETAIL_PX } from './Detail';
import { type Line, pathThrough, rows } from './lines';
import { MarginPlot } from './MarginPlot';
import { labelSide, PLOT_PX, plotLeft } from './marginCurve';
import { Spread } from './Spread';

const RISE_PX = rows.travelBottom - rows.travelTop;

/** A character of the label, whose figures are all of one width; measuring would lay the page out again. */
const CHARACTER_PX = 8;
/** Room for a station alone. */
const LEAST_LABEL_PX = 80;

/** Fuel remaining runs downward: full at the top, dry at the foot. */
const fractionToY = (fraction: number) => rows.travelTop + (1 - fraction) * RISE_PX;

/** "603 mm · 41 % fuel · 11 min 40 s" */
export function momentWords(bench: Bench, say: Readings, line: Line): string {
  const balance = bench.balance.get();
  const { fuel } = bench.document.current();
  const { fuelFraction } = bench.view.getState();
  const at = balance.cgMm?.[line.axis];
  const clock = burnClock(fuel, balance.usableMl);
  const timeS = clock && timeOfFraction(clock, fuelFraction);
  return [
    at === undefined ? '–' : line.axis === 0 ? say.stationFine(at) : say.offset(at),
    `${Math.round(fuelFraction * 100)} % ${fuel?.use === 'dump' ? 'water' : 'fuel'}`,
    ...(timeS === null ? [] : [formatTime(timeS)]),
  ].join(' · ');
}

interface TravelProps {
  readonly line: Line;
  readonly widthPx: number;
}

/** The path of the CG from full to dry against the band, with the disc that scrubs the burn. */
export function Travel({ line, widthPx }: TravelProps) {
  const bench = useBench();
  const say = useReadings();
  const axis = useAxis(line.pick);
  const curve = useRef<SVGPathElement>(null);
  const handle = useRef<SVGGElement>(null);
  const label = useRef<SVGTextElement>(null);
  const reservePct = useAircraft((aircraft) => aircraft.fuel?.reservePct ?? 0);
  const percent = useBenchValue(({ view }) => Math.round(view.getState().fuelFraction * 100));
  const words = useBenchValue(() => momentWords(bench, say, line));
  const plotPx = useBenchValue(({ balance }) => {
    const { cgMm, margin } = balance.get();
    if (!margin || !cgMm || line.axis === 1) return null;
    const cgPx = axisToPx(axis, cgMm[0]);
    const side = cgPx > widthPx / 2 ? 'left' : 'right';
    const detail = widthPx < LEAST_DETAIL_PX ? null : side;
    return plotLeft({ widthPx, cgPx, detail, detailPx: DETAIL_PX, labelPx: LEAST_LABEL_PX });
  });

  useDrawn(() => {
    const { travel, cgMm } = bench.balance.get();
    const { fuelFraction } = bench.view.getState();
    const live: Axis = line.pick(bench.axis.getState());
    curve.current?.setAttribute(
      'd',
      pathThrough(travel.map((p) => `${axisToPx(live, p.cgMm[line.axis])} ${fractionToY(p.fuelFraction)}`)),
    );
    if (!cgMm) return;
    const [x, y] = [axisToPx(live, cgMm[line.axis]), fractionToY(fuelFraction)];
    handle.current?.setAttribute('transform', `translate(${x} ${y})`);
    const width = bench.axis.getState().widthPx;
    const plotOnLeft = plotPx !== null && plotPx < x;
    const fromPx = plotOnLeft ? plotPx + PLOT_PX : 50;
    const toPx =
      plotPx !== null && !plotOnLeft
        ? plotPx
        : width - (x > width / 2 || width < LEAST_DETAIL_PX ? 14 : DETAIL_PX);
    const place = (text: string) => labelSide(x, text.length * CHARACTER_PX, fromPx, toPx);
    const full = momentWords(bench, say, line);
    const station = full.split(' · ', 1)[0] ?? '';
    const said = place(full) === null && plotPx !== null ? station : full;
    const flip = place(said) === 'left';
    if (label.current) label.current.textContent = said;
    label.current?.setAttribute('x', String(flip ? x - 18 : x + 18));
    label.current?.setAttribute('text-anchor', flip ? 'end' : 'start');
    label.current?.setAttribute('y', String(y + 4.5));
  });

  const burnTo = (fraction: number) =>
    bench.view.setState({ fuelFraction: Math.min(1, Math.max(0, fraction)), playing: false });
  const scrub = (event: PointerEvent<SVGSVGElement>) => {
    const y = event.clientY - event.currentTarget.getBoundingClientRect().top + rows.travelTop - 12;
    burnTo(1 - (y - rows.travelTop) / RISE_PX);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing is no fieldset
    <svg
      className="travel"
      role="group"
      aria-label="CG travel"
      width="100%"
      height={RISE_PX + 24}
      viewBox={widthPx > 0 ? `0 ${rows.travelTop - 12} ${widthPx} ${RISE_PX + 24}` : undefined}
      style={{ top: rows.travelTop - 12 }}
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
        <g className="travel-lines">
          <path d={`M46 ${rows.travelTop}H${widthPx - 14}M46 ${rows.travelBottom}H${widthPx - 14}`} />
          <text x="14" y={rows.travelTop + 4}>
            full
          </text>
          <text x="14" y={rows.travelBottom + 4}>
            dry
          </text>
        </g>
        {reservePct > 0 && (
          <g className="reserve">
            <path d={`M66 ${fractionToY(reservePct / 100)}H${widthPx - 14}`} />
            {reservePct >= 15 && reservePct <= 85 && (
              <text x="14" y={fractionToY(reservePct / 100) + 4}>
                reserve
              </text>
            )}
          </g>
        )}
        <Spread line={line} x={(mm) => axisToPx(line.pick(bench.axis.getState()), mm)} y={fractionToY} />
        <path ref={curve} className="travel-curve" />
      </g>
      <Detail line={line} axis={axis} widthPx={widthPx} margins={plotPx === null && line.axis === 0} />
      {plotPx !== null && <MarginPlot leftPx={plotPx} />}
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
        aria-valuetext={words}
        onKeyDown={(event) => {
          const step: Record<string, number> = {
            ArrowUp: 1,
            ArrowRight: 1,
            ArrowDown: -1,
            ArrowLeft: -1,
            PageUp: 10,
            PageDown: -10,
            Home: -100,
            End: 100,
          };
          const by = step[event.key];
          if (by === undefined) return;
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
      <text ref={label} className="travel-label figure" aria-hidden="true" />
    </svg>
  );
}
