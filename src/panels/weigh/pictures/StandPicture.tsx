import type { Corner } from '../../../engine/geometry/polygon';
import { aircraftExtent } from '../../../model/airframe/extent';
import { undersideAt } from '../../../model/weigh/outlines';
import { thoughtAt } from '../../../model/weigh/thought';
import { readingOf, weighInById } from '../../../model/weigh/weighIns';
import { useCommitted } from '../../../store/react';
import { useReadings } from '../../readings';
import { useHeld } from '../useHeld';
import { Airframe, CgKey, CgMark, EDGE, fitted, inSight, useCorners, WIDE } from './drawing';

const MOST_HIGH = 300;
/** A support, and room under it for its figures. */
const SUPPORT = 22;
const BELOW = 56;

/** The aircraft on its stand from the left side and, where it was hung up, from behind. */
export function StandPicture({ id }: { readonly id: string }) {
  const aircraft = useCommitted((committed) => committed);
  const entry = weighInById(aircraft, id);
  const reading = readingOf(aircraft, id, 'stand');
  const held = useHeld(id);
  const say = useReadings();
  const { place, high } = fitted(useCorners('side'), MOST_HIGH, 2 * EDGE);
  const listed = entry && thoughtAt(aircraft, entry).balance;
  const cgMm = listed?.cgMm;
  if (!reading) return null;
  const { maxMm, minMm } = aircraftExtent(aircraft);
  const weighed = held?.ok ? held.weighed : null;
  const { supportMm, addedG, addedAtMm, across } = reading;
  const under = 2 * EDGE + high;
  // With grams laid on it balances at the CG of both.
  const shouldMm = listed?.cgMm
    ? (listed.massG * listed.cgMm[0] + addedG * addedAtMm) / (listed.massG + addedG)
    : null;
  const from = supportMm ?? shouldMm;
  const endsAt = under + SUPPORT + BELOW;
  return (
    <figure className="scales-picture">
      <svg
        viewBox={`0 0 ${WIDE} ${endsAt + (across ? 230 : 0)}`}
        role="img"
        aria-label="The aircraft on its stand"
      >
        <Airframe view="side" at={place} />
        {shouldMm !== null && supportMm !== null && (
          <path
            className="should-stand"
            d={triangle(place([shouldMm, undersideAt(aircraft, shouldMm)]), under + SUPPORT)}
          />
        )}
        {from !== null && (
          <g className={supportMm === null ? 'should-stand' : 'scale'}>
            <path d={triangle(place([from, undersideAt(aircraft, from)]), under + SUPPORT)} />
            <text y={under + SUPPORT}>
              {supportMm !== null && (
                <tspan x={inSight(place([from, 0])[0])} dy="1.15em">
                  {say.stationFine(supportMm)}
                </tspan>
              )}
              {shouldMm !== null && (
                <tspan x={inSight(place([from, 0])[0])} dy="1.15em" className="should">
                  {`should ${say.stationFine(shouldMm)}`}
                </tspan>
              )}
            </text>
          </g>
        )}
        {addedG > 0 && <Grams at={place([addedAtMm, maxMm[2]])} says={say.mass(addedG)} />}
        {cgMm && <CgMark kind="listed" at={place([cgMm[0], cgMm[2]])} />}
        {weighed && cgMm && <CgMark kind="weighed" at={place([weighed.stationMm.value, cgMm[2]])} />}
        {across && (
          <FromBehind
            top={endsAt}
            wideMm={Math.max(maxMm[1], -minMm[1])}
            listedMm={cgMm ? [cgMm[1], cgMm[2]] : null}
            weighedMm={weighed?.buttlineMm ? [weighed.buttlineMm.value, cgMm?.[2] ?? 0] : null}
            grams={across.addedG > 0 ? { atMm: across.addedAtMm, says: say.mass(across.addedG) } : null}
          />
        )}
      </svg>
      <CgKey />
    </figure>
  );
}

interface FromBehindProps {
  readonly top: number;
  readonly wideMm: number;
  readonly listedMm: Corner | null;
  readonly weighedMm: Corner | null;
  readonly grams: { readonly atMm: number; readonly says: string } | null;
}

/** Hung up by its middle, seen from behind: the right wing is to the right. */
function FromBehind({ top, wideMm, listedMm, weighedMm, grams }: FromBehindProps) {
  const corners = useCorners('behind');
  const { place } = fitted([...corners, [-wideMm, 0], [wideMm, 0]], 120, top + 76);
  const [x, y] = place([0, Math.max(...corners.map(([, up]) => up))]);
  return (
    <g>
      <path className="thread" d={`M${x} ${top + 10}V${y}`} />
      <path className="beam-above" d={`M${x - 40} ${top + 10}h80`} />
      <Airframe view="behind" at={place} />
      {grams && <Grams at={place([grams.atMm, 0])} says={grams.says} />}
      {listedMm && <CgMark kind="listed" at={place(listedMm)} />}
      {weighedMm && <CgMark kind="weighed" at={place(weighedMm)} />}
    </g>
  );
}

/** Grams laid on the aircraft. */
const Grams = ({ at: [x, y], says }: { readonly at: Corner; readonly says: string }) => (
  <g className="grams">
    <path d={`M${x - 9} ${y - 2}l3 -14h12l3 14z`} />
    <text x={x} y={y + 18}>
      {says}
    </text>
  </g>
);

/** From the ground up to where it carries the aircraft. */
const triangle = ([x, y]: Corner, groundY: number) => `M${x} ${y}L${x + 24} ${groundY}h-48z`;
