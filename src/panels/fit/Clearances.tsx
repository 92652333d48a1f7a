import { useRef, useState } from 'react';
import { perObjects } from '../../engine/memory/memory';
import type { Aircraft } from '../../model/document/types';
import { type Clearance, clearances } from '../../model/fit/clearances';
import { setText } from '../drawing';
import { useBenchValue, useRestingValue, useWritten } from '../Live';
import { useReadings } from '../readings';

/** The nearest are always listed, one line each; how many there are in all when asked for more. */
const LINES = [0, 1, 2, 3] as const;
const NEAREST = LINES.length;
const MORE = 14;

const kinds = { hull: 'inner face', part: 'part', tank: 'tank', structure: 'structure' } as const;

/** What stands clear of an item, nearest first. */
const clearOf = perObjects((aircraft: Aircraft, id: string): readonly Clearance[] =>
  clearances(aircraft, id).filter(({ distanceMm }) => distanceMm >= 0),
);

/** What stands nearest, as it happens. */
export function Clearances({ id }: { readonly id: string }) {
  const count = useBenchValue(({ document }) =>
    Math.min(NEAREST + 1, clearOf(document.current(), id).length),
  );
  if (count === 0) return <p className="hint">Nothing else stands anywhere near.</p>;
  return (
    <>
      <Nearest id={id} count={Math.min(NEAREST, count)} />
      {count > NEAREST && <FurtherAway id={id} />}
    </>
  );
}

/** Written by hand, so that a drag renders none of it. */
function Nearest({ id, count }: { readonly id: string; readonly count: number }) {
  const say = useReadings();
  const body = useRef<HTMLTableSectionElement>(null);
  useWritten(({ document }) => {
    for (const [at, { what, name, distanceMm }] of clearOf(document.current(), id)
      .slice(0, count)
      .entries()) {
      const row = body.current?.rows[at];
      const [named, kind] = row?.cells[0]?.children ?? [];
      setText(named, name);
      setText(kind, kinds[what]);
      setText(row?.cells[1]?.firstElementChild, say.lengthFine(distanceMm));
    }
  });
  return (
    <table className="fit-table" data-testid="clearances">
      <caption className="unseen">The nearest things, and how far</caption>
      <tbody ref={body}>
        {LINES.slice(0, count).map((line) => (
          <tr key={line}>
            <th scope="row">
              <span /> <span className="hint" />
            </th>
            <td className="figure">
              <span />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Folded until asked for, and then only where the hand rests. */
function FurtherAway({ id }: { readonly id: string }) {
  const say = useReadings();
  const [open, setOpen] = useState(false);
  const list = useRestingValue(({ document }) => clearOf(document.current(), id));
  return (
    <details className="more" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Further away</summary>
      {open && (
        <table className="fit-table">
          <caption className="unseen">Things further away, and how far</caption>
          <tbody>
            {list.slice(NEAREST, MORE).map(({ what, id: other, name, distanceMm }) => (
              <tr key={`${what} ${other}`}>
                <th scope="row">
                  {name} <span className="hint">{kinds[what]}</span>
                </th>
                <td className="figure">{say.lengthFine(distanceMm)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </details>
  );
}
