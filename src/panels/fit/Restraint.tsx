import { perObjects } from '../../engine/memory/memory';
import type { Aircraft } from '../../model/document/types';
import { type Force, itemRestraint } from '../../model/fit/restraint';
import { formatNumber } from '../../model/units';
import { useCommitted } from '../../store/react';
import { entryText } from '../fields/entryText';
import { useReadings } from '../readings';

// Of the aircraft at rest: what lies ahead is found by a cast, too slow for each frame of a drag.
const restraintOf = perObjects((aircraft: Aircraft, id: string) => itemRestraint(aircraft, id));

const ways = [
  { key: 'ahead', label: 'Ahead' },
  { key: 'up', label: 'Up' },
  { key: 'side', label: 'Sideways' },
] as const;

const figures = ({ newtons, kgf }: Force) => [`${formatNumber(newtons, 1)} N`, `${formatNumber(kgf, 2)} kgf`];

/** What its fixing must hold, and what it would strike in a sudden stop. */
export function Restraint({ id }: { readonly id: string }) {
  const say = useReadings();
  const held = useCommitted((aircraft) => restraintOf(aircraft, id));
  if (!held || held.massG === 0) return null;
  return (
    <>
      <h4>Its fixing must hold</h4>
      <table className="fit-table">
        <caption className="unseen">Force on the fixing, by direction, at the load factor</caption>
        <tbody>
          {ways.map(({ key, label }) => (
            <tr key={key}>
              <th scope="row">
                {label}{' '}
                <span className="hint">at {entryText(held.loadFactors[key], 'number', 'metric')} g</span>
              </th>
              {figures(held[key]).map((figure) => (
                <td key={figure} className="figure">
                  {figure}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="hint">
        {held.strikes
          ? `In a sudden stop it strikes ${held.strikes.name}, ${
              held.strikes.afterMm < 0.5 ? 'which it touches' : `${say.length(held.strikes.afterMm)} ahead`
            }.`
          : 'In a sudden stop it meets no part, tank or former ahead of it.'}{' '}
        {held.commonPractice &&
          'The load factors are common practice, no source; set yours on the aircraft’s card.'}
      </p>
    </>
  );
}
