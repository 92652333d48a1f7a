import type { Vec3 } from '../../engine/geometry/types';
import { aircraftExtent } from '../../model/airframe/extent';
import { outlinesOf } from '../../model/weigh/outlines';
import { useCommitted } from '../../store/react';
import { useReadings } from '../readings';
import { predictedOf, scalesOf } from './OnScales';
import { useHeld } from './useHeld';

/** Width of the drawing in its own units; both views share one scale. */
const WIDE = 720;
const EDGE = 28;
/** Room for a scale and its figures under a wheel. */
const UNDER = 64;

/** The aircraft on its scales from the left side and from above; each scale with what it should read and what it reads. */
export function ScalesPicture({ id }: { readonly id: string }) {
  const aircraft = useCommitted((committed) => committed);
  const reading = useCommitted((now) => scalesOf(now, id));
  const loads = useCommitted((now) => predictedOf(now, id));
  const held = useHeld(id);
  const say = useReadings();
  const { minMm, maxMm } = aircraftExtent(aircraft);
  const perMm = (WIDE - 2 * EDGE) / Math.max(1, maxMm[0] - minMm[0]);
  const x = (mm: number) => EDGE + (mm - minMm[0]) * perMm;
  const sideHigh = (maxMm[2] - minMm[2]) * perMm;
  const topHigh = (maxMm[1] - minMm[1]) * perMm;
  const z = (mm: number) => EDGE + (maxMm[2] - mm) * perMm;
  const topAt = EDGE + sideHigh + UNDER + 26;
  // Seen from above the nose is to the left, so right is up.
  const y = (mm: number) => topAt + (maxMm[1] - mm) * perMm;
  const high = topAt + topHigh + EDGE;
  const scales = reading?.scales ?? [];
  const listed = held?.ok ? held.reconciled.before : null;
  const weighed = held?.ok ? held.weighed : null;
  const grams = (at: number) => scales[at] && say.mass(scales[at].grossG - scales[at].tareG);
  const stations = groupsOf(scales.map(({ supportMm }) => supportMm));
  return (
    <svg
      className="scales-picture"
      viewBox={`0 0 ${WIDE} ${high}`}
      role="img"
      aria-label="The aircraft on its scales, from the left side and from above"
    >
      {(['side', 'top'] as const).map((view) => (
        <g key={view}>
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
            <text x={x(atMm)} y={under + 30}>
              {say.mass(reads)}
            </text>
            {should !== null && (
              <text className="should" x={x(atMm)} y={under + 47}>{`should ${say.mass(should)}`}</text>
            )}
          </g>
        );
      })}
      {scales.map(({ supportMm, name }, at) => (
        <g key={`${name} ${supportMm.join()}`} className="scale">
          <rect x={x(supportMm[0]) - 16} y={y(supportMm[1]) - 11} width="32" height="22" rx="3" />
          <text x={x(supportMm[0]) + 24} y={y(supportMm[1]) - 2} className="beside">
            {grams(at)}
          </text>
          {loads && (
            <text
              x={x(supportMm[0]) + 24}
              y={y(supportMm[1]) + 14}
              className="should beside"
            >{`should ${say.mass(loads[at] ?? 0)}`}</text>
          )}
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
      <g className="key">
        <Cross kind="listed" at={[EDGE + 6, high - 12]} />
        <text x={EDGE + 20} y={high - 7}>
          CG by the list
        </text>
        <Cross kind="weighed" at={[EDGE + 136, high - 12]} />
        <text x={EDGE + 150} y={high - 7}>
          CG by the scales
        </text>
      </g>
    </svg>
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
