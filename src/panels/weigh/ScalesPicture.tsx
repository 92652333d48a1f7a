import { useId } from 'react';
import type { Vec3 } from '../../engine/geometry/types';
import { aircraftExtent } from '../../model/airframe/extent';
import { outlinesOf } from '../../model/weigh/outlines';
import { useCommitted } from '../../store/react';
import { useReadings } from '../readings';
import { predictedOf, scalesOf } from './scalesOf';
import { useHeld } from './useHeld';

/** Width of the drawing in its own units; both views share one scale. */
const WIDE = 720;
const EDGE = 28;
/** Room for a scale and its figures under a wheel. */
const UNDER = 92;
/** From above only the middle of the aircraft is drawn, where its supports are. */
const SEEN = { ofSupports: 1.7, ofLength: 0.17 } as const;

/** The aircraft on its scales from the left side and from above; each scale with what it should read and what it reads. */
export function ScalesPicture({ id }: { readonly id: string }) {
  const aircraft = useCommitted((committed) => committed);
  const reading = useCommitted((now) => scalesOf(now, id));
  const loads = useCommitted((now) => predictedOf(now, id));
  const held = useHeld(id);
  const clipId = useId();
  const scales = reading?.scales ?? [];
  const { minMm, maxMm } = aircraftExtent(aircraft);
  const halfMm = Math.min(
    Math.max(maxMm[1], -minMm[1]),
    Math.max(
      SEEN.ofSupports * Math.max(0, ...scales.map(({ supportMm }) => Math.abs(supportMm[1]))),
      SEEN.ofLength * (maxMm[0] - minMm[0]),
    ),
  );
  const perMm = (WIDE - 2 * EDGE) / Math.max(1, maxMm[0] - minMm[0]);
  const x = (mm: number) => EDGE + (mm - minMm[0]) * perMm;
  const sideHigh = (maxMm[2] - minMm[2]) * perMm;
  const z = (mm: number) => EDGE + (maxMm[2] - mm) * perMm;
  const topHigh = 2 * halfMm * perMm;
  const topAt = EDGE + sideHigh + UNDER;
  // Seen from above the nose is to the left, so right is up.
  const y = (mm: number) => topAt + (halfMm - mm) * perMm;
  const high = topAt + topHigh + 8;
  const listed = held?.ok ? held.reconciled.before : null;
  const weighed = held?.ok ? held.weighed : null;
  const stations = groupsOf(scales.map(({ supportMm }) => supportMm));
  return (
    <figure className="scales-picture">
      <svg
        viewBox={`0 0 ${WIDE} ${high}`}
        role="img"
        aria-label="The aircraft on its scales, from the left side and from above"
      >
        <clipPath id={clipId}>
          <rect x="0" y={topAt} width={WIDE} height={topHigh} />
        </clipPath>
        {(['side', 'top'] as const).map((view) => (
          <g key={view} clipPath={view === 'top' ? `url(#${clipId})` : undefined}>
            {outlinesOf(aircraft, view).map(({ id: piece, kind, corners }) => (
              <polygon
                key={piece}
                data-kind={kind}
                points={corners
                  .map(([a, b]) => `${x(a).toFixed(1)},${(view === 'side' ? z(b) : y(b)).toFixed(1)}`)
                  .join(' ')}
              />
            ))}
          </g>
        ))}
        {stations.map(({ atMm, members }) => {
          const under = EDGE + sideHigh + 4;
          const should = loads && members.reduce((sum, at) => sum + (loads[at] ?? 0), 0);
          const reads = members.reduce(
            (sum, at) => sum + (scales[at] ? scales[at].grossG - scales[at].tareG : 0),
            0,
          );
          return (
            <g key={atMm} className="scale">
              <path d={`M${x(atMm) - 22} ${under}h44l6 12h-56z`} />
              <Figures x={x(atMm)} y={under + 16} reads={reads} should={should} />
            </g>
          );
        })}
        {scales.map(({ supportMm, name }, at) => (
          <g key={`${name} ${supportMm.join()}`} className="scale">
            <rect x={x(supportMm[0]) - 16} y={y(supportMm[1]) - 11} width="32" height="22" rx="3" />
            <Figures
              beside
              x={x(supportMm[0]) + 22}
              y={y(supportMm[1]) - 20}
              reads={scales[at] ? scales[at].grossG - scales[at].tareG : 0}
              should={loads?.[at] ?? null}
            />
          </g>
        ))}
        {listed && (
          <>
            <Cross kind="listed" at={[x(listed.cgMm[0].value), z(listed.cgMm[2].value)]} />
            <Cross kind="listed" at={[x(listed.cgMm[0].value), y(listed.cgMm[1].value)]} />
          </>
        )}
        {weighed && listed && (
          <>
            <Cross kind="weighed" at={[x(weighed.stationMm.value), z(listed.cgMm[2].value)]} />
            {weighed.buttlineMm && (
              <Cross kind="weighed" at={[x(weighed.stationMm.value), y(weighed.buttlineMm.value)]} />
            )}
          </>
        )}
      </svg>
      <figcaption>
        {(['listed', 'weighed'] as const).map((kind) => (
          <span key={kind}>
            <svg className="mark-of-cg" viewBox="0 0 20 20" aria-hidden="true">
              <Cross kind={kind} at={[10, 10]} />
            </svg>
            {kind === 'listed' ? 'CG by the list' : 'CG by the scales'}
          </span>
        ))}
      </figcaption>
    </figure>
  );
}

interface FiguresProps {
  readonly x: number;
  readonly y: number;
  /** Tare apart, g; 0 for nothing read yet. */
  readonly reads: number;
  readonly should: number | null;
  /** Beside the scale, not under it. */
  readonly beside?: boolean;
}

/** What a scale reads, and under it what it should read by the list. */
function Figures({ x, y, reads, should, beside = false }: FiguresProps) {
  const say = useReadings();
  return (
    <text y={y} className={beside ? 'beside' : undefined}>
      {reads > 0 && (
        <tspan x={x} dy="1.15em">
          {say.mass(reads)}
        </tspan>
      )}
      {should !== null && <tspan x={x} dy="1.15em" className="should">{`should ${say.mass(should)}`}</tspan>}
    </text>
  );
}

/** A disc in quarters for the list, a ring with a point for the scales: told apart without colour. */
function Cross({
  kind,
  at: [cx, cy],
}: {
  readonly kind: 'listed' | 'weighed';
  readonly at: readonly [number, number];
}) {
  if (kind === 'weighed') {
    return (
      <g className="cg-weighed">
        <circle cx={cx} cy={cy} r="9" />
        <circle cx={cx} cy={cy} r="2" />
      </g>
    );
  }
  return (
    <g className="cg-listed">
      <circle cx={cx} cy={cy} r="5" />
      <path d={`M${cx} ${cy}h5a5 5 0 0 1-5 5zM${cx} ${cy}h-5a5 5 0 0 1 5-5z`} />
    </g>
  );
}

/** Seen from the side, scales at one station stand behind each other. */
function groupsOf(supports: readonly Vec3[]) {
  const groups: { readonly atMm: number; readonly members: number[] }[] = [];
  supports.forEach(([station], at) => {
    const group = groups.find(({ atMm }) => Math.abs(atMm - station) < 20);
    if (group) group.members.push(at);
    else groups.push({ atMm: station, members: [at] });
  });
  return groups;
}
