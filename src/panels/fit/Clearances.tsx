import { type Clearance, clearances } from '../../model/fit/clearances';
import { useAircraft } from '../../store/react';
import { type Readings, useReadings } from '../readings';

/** How many of the nearest are always listed, and how many there are when asked for more. */
const NEAREST = 4;
const MORE = 14;

const kinds = { hull: 'inner face', part: 'part', tank: 'tank', structure: 'structure' } as const;

/** What stands nearest, as it happens. */
export function Clearances({ id }: { readonly id: string }) {
  const say = useReadings();
  const list = useAircraft((aircraft) => clearances(aircraft, id));
  const clear = list.filter(({ distanceMm }) => distanceMm >= 0);
  if (clear.length === 0) return <p className="hint">Nothing else stands anywhere near.</p>;
  return (
    <>
      <table className="fit-table" data-testid="clearances">
        <caption className="unseen">The nearest things, and how far</caption>
        <tbody>{rows(clear.slice(0, NEAREST), say)}</tbody>
      </table>
      {clear.length > NEAREST && (
        <details className="more">
          <summary>Further away</summary>
          <table className="fit-table">
            <caption className="unseen">Things further away, and how far</caption>
            <tbody>{rows(clear.slice(NEAREST, MORE), say)}</tbody>
          </table>
        </details>
      )}
    </>
  );
}

const rows = (list: readonly Clearance[], say: Readings) =>
  list.map(({ what, id, name, distanceMm }) => (
    <tr key={`${what} ${id}`}>
      <th scope="row">
        {name} <span className="hint">{kinds[what]}</span>
      </th>
      <td className="figure">{say.lengthFine(distanceMm)}</td>
    </tr>
  ));
