import { formatAngle } from '../../../model/units';
import { tiltedState } from '../../../model/weigh/byTilt';
import { predictedTilt } from '../../../model/weigh/predicted';
import { readingOf, weighInById } from '../../../model/weigh/weighIns';
import { useCommitted } from '../../../store/react';
import { useHeld } from '../useHeld';
import { CgKey, WIDE } from './drawing';
import { Standing, type Support, useStanding } from './Standing';

const MOST_HIGH = 330;

/** The aircraft held at the steepest of its tilts, one axle chocked and the other on the scale. */
export function TiltPicture({ id }: { readonly id: string }) {
  const aircraft = useCommitted((committed) => committed);
  const entry = weighInById(aircraft, id);
  const reading = readingOf(aircraft, id, 'tilt');
  const held = useHeld(id);
  const steepest = [...(reading?.readings ?? [])].sort(
    (a, b) => Math.abs(b.pitchDeg) - Math.abs(a.pitchDeg),
  )[0];
  const pitchDeg = Math.min(60, Math.max(-60, steepest?.pitchDeg ?? 0));
  const state = entry && tiltedState(aircraft, entry, pitchDeg);
  const supports: readonly Support[] = reading
    ? [
        { atMm: reading.pivotMm, scale: null },
        {
          atMm: reading.otherMm,
          scale: {
            reads: Math.max(0, (steepest?.grossG ?? 0) - reading.tareG),
            should: state ? predictedTilt(reading.pivotMm, reading.otherMm, state, pitchDeg) : null,
          },
        },
      ]
    : [];
  const layout = useStanding(supports, pitchDeg, MOST_HIGH);
  if (!reading) return null;
  const cg = held?.ok ? held.reconciled.before.cgMm.map(({ value }) => value) : state?.cgMm;
  const weighed = held?.ok ? held.weighed : null;
  const [x, y] = layout.at([reading.pivotMm[0], reading.pivotMm[2]]);
  const [ahead, up] = layout.at([reading.otherMm[0], reading.otherMm[2]]);
  const side = Math.sign(ahead - x) || 1;
  const long = Math.hypot(ahead - x, up - y);
  const far = long * 0.72;
  return (
    <figure className="scales-picture">
      <svg
        viewBox={`0 0 ${WIDE} ${layout.high + 10}`}
        role="img"
        aria-label={`The aircraft tilted to ${formatAngle(pitchDeg)}, its main axle chocked, the other on the scale`}
      >
        <Standing
          supports={supports}
          layout={layout}
          listedMm={cg ? [cg[0]!, cg[2]!] : null}
          weighedMm={weighed?.waterlineMm ? [weighed.stationMm.value, weighed.waterlineMm.value] : null}
        />
        {pitchDeg !== 0 && long > 1 && (
          <g className="angle">
            <path d={`M${x} ${y}h${side * far}M${x} ${y}L${x + (ahead - x) * 0.72} ${y + (up - y) * 0.72}`} />
            <text x={x + side * far * 0.62} y={y + (up - y) * 0.26 + 5}>
              {formatAngle(pitchDeg, { signed: true })}
            </text>
          </g>
        )}
      </svg>
      <CgKey />
    </figure>
  );
}
