import './result.css';
import { useState } from 'react';
import { poseRotation } from '../../engine/geometry/rotation';
import type { Item } from '../../model/document/edit';
import type { MoveRow } from '../../model/words/moveRows';
import { RoleMark } from '../icons';
import { type Readings, useReadings } from '../readings';

interface MovesProps {
  readonly rows: readonly MoveRow[];
  /** So many of them are shown on the stage; all when left out. */
  readonly shown?: number | null;
  /** Each with a box to tick when it is done. */
  readonly ticks?: boolean;
}

/** What is to be done, one line for each item, in the order in which it is done. */
export function Moves({ rows, shown = null, ticks = false }: MovesProps) {
  const say = useReadings();
  const [done, setDone] = useState<readonly string[]>([]);
  const toggle = (id: string) =>
    setDone((ids) => (ids.includes(id) ? ids.filter((each) => each !== id) : [...ids, id]));
  return (
    <ol className="moves">
      {rows.map((row, i) => (
        <li key={row.id} data-shown={shown === null || i < shown} data-done={done.includes(row.id)}>
          {ticks ? (
            <label>
              <input
                type="checkbox"
                aria-label={`${row.name} is done`}
                checked={done.includes(row.id)}
                onChange={() => toggle(row.id)}
              />
              <Move row={row} say={say} />
            </label>
          ) : (
            <>
              <RoleMark of={row.role ?? 'fuel'} />
              <Move row={row} say={say} />
            </>
          )}
        </li>
      ))}
    </ol>
  );
}

const Move = ({ row, say }: { readonly row: MoveRow; readonly say: Readings }) => (
  <span>
    <strong>{row.name}</strong> {wayWords(row, say)} <span className="why">{whyWords(row)}</span>
  </span>
);

/** Less than this is the same place, mm. */
const SAME_MM = 0.5;

const whyWords = ({ why, from, to }: MoveRow): string =>
  from && to ? `${why.charAt(0).toUpperCase()}${why.slice(1)}.` : '';

function wayWords({ from, to, massG, place }: MoveRow, say: Readings): string {
  if (!to) return `comes out, ${say.mass(massG)} less.`;
  const at = say.station(to.positionMm[0]);
  if (!from) return `${say.mass(massG)} comes in at station ${at}.`;
  const words = [
    ...massWords(from, to, say),
    ...(Math.abs(to.positionMm[0] - from.positionMm[0]) < SAME_MM
      ? []
      : [`from ${say.station(from.positionMm[0])} to ${at}`]),
    ...across(from.positionMm[1], to.positionMm[1], 'left', 'right', say),
    ...across(from.positionMm[2], to.positionMm[2], 'down', 'up', say),
    ...turnWords(from, to),
  ];
  if (words.length === 0) return 'by less than half a millimetre.';
  return `${words.join(', ')}${place && place !== 'its rail' ? `: ${place}` : ''}.`;
}

/** Turned where it stands, or onto another of its sides. */
function turnWords(from: Item, to: Item): string[] {
  const { yawDeg, pitchDeg, rollDeg } = from;
  if (yawDeg === to.yawDeg && pitchDeg === to.pitchDeg && rollDeg === to.rollDeg) return [];
  const [was, is] = [poseRotation(from), poseRotation(to)];
  const isUpright = ([2, 5, 8] as const).every((k) => Math.abs(was[k] - is[k]) < 1e-6);
  return [isUpright ? 'turned' : 'turned onto another side'];
}

/** Less than this is the same mass, g. */
const SAME_G = 0.05;

function massWords(
  from: NonNullable<MoveRow['from']>,
  to: NonNullable<MoveRow['to']>,
  say: Readings,
): string[] {
  if (!('massG' in from) || !('massG' in to) || Math.abs(from.massG - to.massG) < SAME_G) return [];
  return [`${say.mass(from.massG)} becomes ${say.mass(to.massG)}`];
}

function across(from: number, to: number, less: string, more: string, say: Readings): string[] {
  const by = to - from;
  return Math.abs(by) < SAME_MM ? [] : [`${say.length(Math.abs(by))} ${by < 0 ? less : more}`];
}
