import { axisToPx } from '../../store/axisStore';
import { useAircraft, useAxis, useBench, useView } from '../../store/react';
import { useBenchValue } from '../Live';
import { useReadings } from '../readings';
import type { Line } from './lines';
import { rowsOf } from './rows';

interface ZoneProps {
  readonly line: Line;
  readonly heightPx: number;
}

/** The band that the CG must stay in, from the top of the strip to its foot, with its limits. */
export function Zone({ line, heightPx }: ZoneProps) {
  const bench = useBench();
  const axis = useAxis(line.pick);
  const rows = useView(rowsOf);
  const say = useReadings();
  const limit = (which: 'forwardMm' | 'aftMm') => () =>
    line.zone(bench.document.current(), bench.balance.get())?.[which] ?? null;
  const forwardMm = useBenchValue(limit('forwardMm'));
  const aftMm = useBenchValue(limit('aftMm'));
  const lateral = line.axis === 1;
  const tolerance = useAircraft((aircraft) => aircraft.lateralToleranceMm);
  const estimated = useBenchValue(({ balance }) => !lateral && balance.get().bandFrom === 'estimate');
  const fresh = useBenchValue(({ balance }) => balance.get().estimateFresh);
  if (forwardMm === null || aftMm === null) return null;
  const [a, b] = [axisToPx(axis, forwardMm), axisToPx(axis, aftMm)];
  const [left, right] = [Math.min(a, b), Math.max(a, b)];
  const leftLabel = lateral ? `±${say.length(tolerance)}` : say.station(forwardMm);
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group in a drawing takes no focus
    <g className="zone" data-estimated={estimated} data-fresh={!estimated || fresh} aria-hidden="true">
      <rect x={left} width={Math.max(right - left, 1)} y="0" height={heightPx} />
      <path d={`M${left} 0V${heightPx}M${right} 0V${heightPx}`} />
      <text x={left - 6} y={rows.labels} textAnchor="end" className="figure">
        {leftLabel}
      </text>
      {!lateral && (
        <text x={right + 6} y={rows.labels} className="figure">
          {say.station(aftMm)}
        </text>
      )}
    </g>
  );
}
