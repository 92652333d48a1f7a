import { heldAgainst } from '../../model/weigh/heldAgainst';
import { weighInsOf } from '../../model/weigh/weighIns';
import { dayWords } from '../../model/words/weighWords';
import { useCommitted } from '../../store/react';
import { useReadings } from '../readings';

const WIDE = 232;
const HIGH = 128;
const EDGE = 10;

/** Measured less listed station of every weigh-in over the days, each with its ±; 0 is the list as it is now. */
export function Drift() {
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const points = weighInsOf(aircraft)
    .flatMap((entry) => {
      const held = heldAgainst(aircraft, entry);
      if (!held.ok) return [];
      const { sigma } = held.weighed.stationMm;
      return [{ id: entry.id, date: entry.date, offMm: held.stationOffMm, plusMinusMm: 2 * sigma }];
    })
    .sort((a, b) => a.date.localeCompare(b.date));
  const [first] = points;
  const last = points.at(-1);
  if (!first || !last || points.length < 2) return null;
  const most = Math.max(1, ...points.map(({ offMm, plusMinusMm }) => Math.abs(offMm) + plusMinusMm));
  const [from, to] = [Date.parse(first.date), Date.parse(last.date)];
  const x = (date: string) =>
    to > from ? EDGE + ((Date.parse(date) - from) / (to - from)) * (WIDE - 2 * EDGE) : WIDE / 2;
  const y = (mm: number) => HIGH / 2 + (mm / most) * (HIGH / 2 - 20);
  return (
    <figure className="weigh-drift">
      <figcaption>CG along, against the list as it is now</figcaption>
      <svg
        viewBox={`0 0 ${WIDE} ${HIGH}`}
        role="img"
        aria-label={points.map(({ date, offMm }) => `${dayWords(date)}: ${say.offset(offMm)}`).join('; ')}
      >
        <text x="0" y="11">{`${say.lengthFine(most)} farther forward`}</text>
        <text x="0" y={HIGH - 3}>{`${say.lengthFine(most)} farther aft`}</text>
        <line className="drift-zero" x1="0" x2={WIDE} y1={HIGH / 2} y2={HIGH / 2} />
        <polyline
          className="drift-line"
          points={points.map(({ date, offMm }) => `${x(date)},${y(offMm)}`).join(' ')}
        />
        {points.map(({ id, date, offMm, plusMinusMm }) => (
          <g key={id}>
            <line
              className="drift-bar"
              x1={x(date)}
              x2={x(date)}
              y1={y(offMm - plusMinusMm)}
              y2={y(offMm + plusMinusMm)}
            />
            <circle className="drift-point" cx={x(date)} cy={y(offMm)} r="3.5" />
          </g>
        ))}
      </svg>
      <p className="drift-days figure">
        <span>{dayWords(first.date)}</span>
        <span>{dayWords(last.date)}</span>
      </p>
    </figure>
  );
}
