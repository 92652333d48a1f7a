import type { MoveRow } from '../../model/words/moveRows';
import { RoleMark } from '../icons';
import { type Readings, useReadings } from '../readings';

/** What is to be done, one line for each thing. */
export function Moves({ rows }: { readonly rows: readonly MoveRow[] }) {
  const say = useReadings();
  return (
    <ul className="moves">
      {rows.map((row) => (
        <li key={row.id}>
          <RoleMark of={row.role} />
          <span>
            <strong>{row.name}</strong> {wayWords(row, say)}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** Less than this is the same place, mm. */
const SAME_MM = 0.5;

function wayWords({ from, to, massG, place }: MoveRow, say: Readings): string {
  if (!to) return `comes out, ${say.mass(massG)} less.`;
  const at = say.station(to.positionMm[0]);
  if (!from) return `${say.mass(massG)} comes in at station ${at}.`;
  const words = [
    ...(Math.abs(to.positionMm[0] - from.positionMm[0]) < SAME_MM
      ? []
      : [`from ${say.station(from.positionMm[0])} to ${at}`]),
    ...across(from.positionMm[1], to.positionMm[1], 'left', 'right', say),
    ...across(from.positionMm[2], to.positionMm[2], 'down', 'up', say),
    ...(from.yawDeg === to.yawDeg ? [] : ['turned']),
  ];
  if (words.length === 0) return 'by less than half a millimetre.';
  return `${words.join(', ')}${place && place !== 'its rail' ? `: ${place}` : ''}.`;
}

function across(from: number, to: number, less: string, more: string, say: Readings): string[] {
  const by = to - from;
  return Math.abs(by) < SAME_MM ? [] : [`${say.length(Math.abs(by))} ${by < 0 ? less : more}`];
}
