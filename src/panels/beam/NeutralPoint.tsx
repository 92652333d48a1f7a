import { axisToPx } from '../../store/axisStore';
import { useAxis, useBench, useStability, useView } from '../../store/react';
import { useBenchValue } from '../Live';
import { NeutralPointSign } from '../NeutralPointSign';
import { useReadings } from '../readings';
import { stationLine } from './lines';
import { rowsOf } from './rows';

/** The estimated neutral point on the ruler, with a line through the strip that goes on from the stage. */
export function NeutralPoint({ heightPx }: { readonly heightPx: number }) {
  const say = useReadings();
  const axis = useAxis(stationLine.pick);
  const rows = useView(rowsOf);
  const widthPx = useAxis((state) => state.widthPx);
  const atMm = useStability(({ estimate }) => estimate?.neutralPointMm ?? null);
  const fresh = useStability((stability) => stability.fresh);
  if (atMm === null) return null;
  const x = axisToPx(axis, atMm);
  const flip = x > widthPx - 150;
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group in a drawing takes no focus
    <g className="neutral-point" data-testid="neutral-point" data-fresh={fresh} aria-hidden="true">
      <line x1={x} x2={x} y1="0" y2={heightPx} />
      <g transform={`translate(${x} ${rows.ruler})`}>
        <NeutralPointSign />
        <text x={flip ? -16 : 16} y="-6" textAnchor={flip ? 'end' : 'start'} className="figure">
          NP est. {say.station(atMm)}
        </text>
      </g>
    </g>
  );
}

/** The band that the margin wanted makes of the estimate, hatched where stated limits stand beside it. */
export function EstimatedZone({ heightPx }: { readonly heightPx: number }) {
  const bench = useBench();
  const axis = useAxis(stationLine.pick);
  const rows = useView(rowsOf);
  const edge = (which: 'forwardMm' | 'aftMm') => () => bench.balance.get().estimatedBand?.[which] ?? null;
  const forwardMm = useBenchValue(edge('forwardMm'));
  const aftMm = useBenchValue(edge('aftMm'));
  const fresh = useStability((stability) => stability.fresh);
  const stated = useBenchValue(({ balance }) => balance.get().bandFrom === 'stated');
  if (forwardMm === null || aftMm === null) return null;
  const [left, right] = [axisToPx(axis, forwardMm), axisToPx(axis, aftMm)];
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group in a drawing takes no focus
    <g className="estimated-zone" data-fresh={fresh} aria-hidden="true">
      <defs>
        <pattern
          id="est-hatch"
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(-45)"
        >
          <line x1="0" x2="0" y1="0" y2="7" />
        </pattern>
      </defs>
      <rect x={left} width={Math.max(right - left, 1)} y="0" height={heightPx} fill="url(#est-hatch)" />
      <path d={`M${left} 0V${heightPx}M${right} 0V${heightPx}`} />
      <text x={stated ? left - 6 : right + 6} y={rows.labels + 18} textAnchor={stated ? 'end' : 'start'}>
        estimated band
      </text>
    </g>
  );
}
