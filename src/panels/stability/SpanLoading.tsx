import { useMemo } from 'react';
import type { StabilityEstimate } from '../../model/stability/stability';
import { formatNumber } from '../../model/units';
import { useAircraft } from '../../store/react';
import { useReadings } from '../readings';
import { greatestCl, type LoadCurve, loadCurves } from './loadingPicture';

const WIDTH = 250;
const HEIGHT = 104;
const LEFT = 26;
const FOOT = HEIGHT - 18;
const TOP = 8;

/** How lift is spread along the right half: cl·c as areas, the local cl as lines. */
export function SpanLoading({ estimate }: { readonly estimate: StabilityEstimate }) {
  const say = useReadings();
  const curves = useMemo(() => loadCurves(estimate.strips, estimate.clAlphaPerRad), [estimate]);
  const peak = greatestCl(curves);
  const peakName = useAircraft(({ structure }) => structure.find(({ id }) => id === peak?.surfaceId)?.name);
  if (!peak) return null;

  const all = curves.flatMap(({ points }) => points);
  const outMost = Math.max(...all.map(({ outMm }) => outMm)) * 1.01;
  const most = Math.max(1, ...all.flatMap(({ cl, load }) => [cl, load])) * 1.06;
  const x = (outMm: number) => LEFT + (outMm / outMost) * (WIDTH - LEFT - 4);
  const y = (value: number) => FOOT - (Math.max(value, 0) / most) * (FOOT - TOP);
  const line = ({ points }: LoadCurve, of: 'cl' | 'load') =>
    points.map((point) => `${x(point.outMm).toFixed(1)} ${y(point[of]).toFixed(1)}`).join('L');
  const ends = ({ points }: LoadCurve) => [x(points[0]?.outMm ?? 0), x(points.at(-1)?.outMm ?? 0)] as const;
  const words = `Greatest local cl ${formatNumber(peak.cl, 2)} at buttline ${say.length(peak.outMm)}, ${peakName}.`;
  return (
    <figure className="span-loading">
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`Estimated lift along the right half. ${words}`}
      >
        <path className="span-axes" d={`M${LEFT} ${y(1)}H${WIDTH - 4}M${LEFT} ${TOP}V${FOOT}H${WIDTH - 4}`} />
        {curves.map((curve) => (
          <path
            key={curve.surfaceId}
            className="span-load"
            d={`M${ends(curve)[0]} ${FOOT}L${line(curve, 'load')}L${ends(curve)[1]} ${FOOT}Z`}
          />
        ))}
        {curves.map((curve) => (
          <path key={curve.surfaceId} className="span-cl" d={`M${line(curve, 'cl')}`} />
        ))}
        <circle className="span-peak" cx={x(peak.outMm)} cy={y(peak.cl)} r="3" />
        <text x={LEFT - 5} y={y(1) + 4} textAnchor="end">
          1
        </text>
        <text x={LEFT - 5} y={FOOT + 4} textAnchor="end">
          0
        </text>
        <text x={LEFT} y={HEIGHT - 4}>
          centre
        </text>
        <text x={WIDTH - 4} y={HEIGHT - 4} textAnchor="end">
          {say.length(outMost / 1.01)} out
        </text>
      </svg>
      <figcaption>
        <span className="span-key-load" /> cl × chord <span className="span-key-cl" /> local cl, at a lift
        coefficient of 1 without twist. {words}
      </figcaption>
    </figure>
  );
}
