import type { KeyboardEvent, PointerEvent } from 'react';
import { useAircraft, useBench, useView } from '../../store/react';
import { useBenchValue } from '../Live';
import type { Line } from './lines';
import { rowsOf } from './rows';
import { Spread } from './Spread';
import { stabilityShown } from './stabilityLayer';
import { TravelBand } from './TravelBand';
import { TravelMac } from './TravelMac';
import { travelPx } from './travelScale';
import { fractionToY, useTravelPicture } from './useTravelPicture';
import { fromPx, toPx, useTravelScale } from './useTravelScale';

interface TravelProps {
  readonly line: Line;
  readonly widthPx: number;
}

/** The path of the CG from full to dry against the band, as large as it can be drawn, with the disc that scrubs the burn. */
export function Travel({ line, widthPx }: TravelProps) {
  const bench = useBench();
  const rows = useView(rowsOf);
  const stability = useView(stabilityShown) && line.axis === 0;
  const scaleOf = useTravelScale(line);
  const { curve, ahead, ends, ghost, handle, reading } = useTravelPicture(line, widthPx, scaleOf);
  const reservePct = useAircraft((aircraft) => aircraft.fuel?.reservePct ?? 0);
  const percent = useBenchValue(({ view }) => Math.round(view.getState().fuelFraction * 100));
  const factor = useBenchValue((live) => scaleOf(live).factor);
  const y = (fraction: number) => fractionToY(fraction, rows);

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
          <text x={toPx(widthPx)} y={rows.travelFoot - 14} textAnchor="end" className="travel-scale">
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
        <path className="disc-ground" />
        <path className="disc-quarters" />
        <path className="disc-ring" />
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
