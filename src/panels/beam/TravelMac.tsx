import { wingPlanform } from '../../model/stability/band';
import { formatNumber } from '../../model/units';
import type { Bench } from '../../store/bench';
import { useAircraft, useView } from '../../store/react';
import { useBenchValue } from '../Live';
import { macMarksBetween } from './macScale';
import { rowsOf } from './rows';
import type { TravelScale } from './travelScale';
import { fromPx, toPx } from './useTravelScale';

interface TravelMacProps {
  readonly widthPx: number;
  readonly scaleOf: (bench: Bench) => TravelScale;
}

/** Over the enlarged travel the same stretch in % MAC. */
export function TravelMac({ widthPx, scaleOf }: TravelMacProps) {
  const mac = useAircraft(wingPlanform);
  const rows = useView(rowsOf);
  const mmPerPx = useBenchValue((bench) => scaleOf(bench).mmPerPx);
  const atLeftMm = useBenchValue((bench) => {
    const { middleMm, middlePx } = scaleOf(bench);
    return middleMm - middlePx * mmPerPx;
  });
  if (!mac) return null;
  const marks = macMarksBetween(mac, { atLeftMm, mmPerPx }, fromPx, toPx(widthPx));
  const top = rows.travelTop - 6;
  return (
    <g className="mac-scale">
      <path className="mac-ticks" d={marks.map(({ xPx }) => `M${xPx} ${top}v-4`).join('')} />
      {marks.map(({ pct, xPx }) => (
        <text key={pct} x={xPx} y={top - 5} textAnchor="middle" className="figure">
          {formatNumber(pct, Number.isInteger(pct) ? 0 : 1)}
        </text>
      ))}
      <text x="14" y={top - 5}>
        % MAC
      </text>
    </g>
  );
}
