import { useId } from 'react';
import type { Corner } from '../../../engine/geometry/polygon';
import { aircraftExtent } from '../../../model/airframe/extent';
import { useCommitted } from '../../../store/react';
import { predictedOf, scalesOf } from '../scalesOf';
import { useHeld } from '../useHeld';
import { useListedCg } from '../useListedCg';
import { Airframe, CgKey, CgMark, EDGE, Figures, WIDE } from './drawing';
import { oneBehindTheOther, Standing, type Support, useStanding } from './Standing';

/** From above only the middle of the aircraft is drawn, where its supports are. */
const SEEN = { ofSupports: 1.7, ofLength: 0.17 } as const;
const MOST_HIGH = 320;

/** The aircraft on its scales from the left side and from above; each scale with what it should read and what it reads. */
export function ScalesPicture({ id }: { readonly id: string }) {
  const aircraft = useCommitted((committed) => committed);
  const reading = useCommitted((now) => scalesOf(now, id));
  const loads = useCommitted((now) => predictedOf(now, id));
  const held = useHeld(id);
  const listed = useListedCg(id);
  const clipId = useId();
  const supports = (reading?.scales ?? []).map(
    ({ supportMm, grossG, tareG }, at): Support => ({
      atMm: supportMm,
      scale: { reads: grossG - tareG, should: loads?.[at] ?? null },
    }),
  );
  const sideways = oneBehindTheOther(supports);
  const layout = useStanding(sideways, reading?.pitchDeg ?? 0, MOST_HIGH);
  const { minMm, maxMm } = aircraftExtent(aircraft);
  const long = maxMm[0] - minMm[0];
  const halfMm = Math.min(
    Math.max(maxMm[1], -minMm[1]),
    Math.max(
      SEEN.ofSupports * Math.max(0, ...supports.map(({ atMm }) => Math.abs(atMm[1]))),
      SEEN.ofLength * long,
    ),
  );
  const perMm = (WIDE - 2 * EDGE) / Math.max(1, long);
  const topAt = layout.high + 20;
  const topHigh = 2 * halfMm * perMm;
  // Seen from above the nose is to the left, so right is up.
  const top = ([a, b]: Corner): Corner => [EDGE + (a - minMm[0]) * perMm, topAt + (halfMm - b) * perMm];
  const weighed = held?.ok ? held.weighed : null;
  return (
    <figure className="scales-picture">
      <svg
        viewBox={`0 0 ${WIDE} ${topAt + topHigh + 8}`}
        role="img"
        aria-label="The aircraft on its scales, from the left side and from above"
      >
        <clipPath id={clipId}>
          <rect x="0" y={topAt} width={WIDE} height={topHigh} />
        </clipPath>
        <Standing
          supports={sideways}
          layout={layout}
          listedMm={listed && [listed[0], listed[2]]}
          weighedMm={weighed && listed && [weighed.stationMm.value, listed[2]]}
        />
        <g clipPath={`url(#${clipId})`}>
          <Airframe view="top" at={top} />
        </g>
        {supports.map(({ atMm, scale }, at) => {
          const [x, y] = top([atMm[0], atMm[1]]);
          return (
            <g key={at} className="scale">
              <rect x={x - 16} y={y - 11} width="32" height="22" rx="3" />
              {scale && <Figures beside x={x + 22} y={y - 20} {...scale} />}
            </g>
          );
        })}
        {listed && <CgMark kind="listed" at={top([listed[0], listed[1]])} />}
        {weighed?.buttlineMm && (
          <CgMark kind="weighed" at={top([weighed.stationMm.value, weighed.buttlineMm.value])} />
        )}
      </svg>
      <CgKey />
    </figure>
  );
}
