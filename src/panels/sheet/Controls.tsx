import { useId, useState } from 'react';
import { SECTIONS, sectionNames } from '../../model/sheet/blocks';
import { PAPERS, papers } from '../../model/sheet/paper';
import type { OrderSearch } from '../../model/sheet/parts';
import { useBench, useView } from '../../store/react';
import { chooseSheet } from '../../store/viewStore';
import { entryText, readEntry } from '../fields/entryText';
import { Term } from '../Term';
import { BalancedAs } from './BalancedAs';

interface ControlsProps {
  readonly pageCount: number;
  readonly search: OrderSearch;
}

/** What is printed, on which paper, and in which state the aircraft will be balanced. */
export function Controls({ pageCount, search }: ControlsProps) {
  const { view } = useBench();
  const { paper, leftOut, by } = useView(({ sheet }) => sheet);
  const byId = useId();
  return (
    <aside className="sheet-controls" aria-label="What is printed">
      <header>
        <h2>Build sheet</h2>
        <button
          type="button"
          className="button strong"
          disabled={pageCount === 0}
          onClick={() => globalThis.print()}
        >
          Print
        </button>
      </header>
      <p className="hint" role="status">
        {pageWords(pageCount)} {search.state === 'searching' && 'The ways in are still being looked for.'}
      </p>
      <fieldset>
        <legend>Paper</legend>
        {PAPERS.map((id) => (
          <label key={id}>
            <input
              type="radio"
              name="sheet-paper"
              checked={paper === id}
              onChange={() => chooseSheet(view, { paper: id })}
            />
            {papers[id].name}
          </label>
        ))}
      </fieldset>
      <fieldset>
        <legend>Print</legend>
        {SECTIONS.map((id) => (
          <label key={id}>
            <input
              type="checkbox"
              checked={!leftOut.includes(id)}
              onChange={({ target: { checked } }) =>
                chooseSheet(view, {
                  leftOut: checked ? leftOut.filter((each) => each !== id) : [...leftOut, id],
                })
              }
            />
            {sectionNames[id]}
          </label>
        ))}
      </fieldset>
      <BalancedAs />
      <ButtlineField />
      <div className="sheet-field">
        <label htmlFor={byId}>Made by</label>
        <input
          id={byId}
          type="text"
          maxLength={60}
          value={by}
          autoComplete="off"
          onChange={({ target }) => chooseSheet(view, { by: target.value })}
        />
      </div>
      <p className="hint">Print at 100 %, without headers and margins of the browser’s own.</p>
    </aside>
  );
}

const pageWords = (count: number): string =>
  count === 0 ? 'Nothing is ticked.' : count === 1 ? 'One page.' : `${count} pages.`;

/** Where the wing is marked; empty is just beside the hull. */
function ButtlineField() {
  const { view } = useBench();
  const units = useView((state) => state.units);
  const buttlineMm = useView(({ sheet }) => sheet.buttlineMm);
  const [typed, setTyped] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const id = useId();
  const enter = () => {
    if (typed === null) return;
    const entry = readEntry(typed, 'length', units, true);
    if (!entry.ok) return setFault(entry.sentence);
    if (entry.value !== null && entry.value < 0)
      return setFault('Expected 0 or more: both wings are marked.');
    setFault(null);
    setTyped(null);
    chooseSheet(view, { buttlineMm: entry.value });
  };
  return (
    <div className="sheet-field">
      <span>
        Wing marked at <Term of="buttline">buttline</Term>
      </span>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        aria-label="Wing marked at buttline"
        autoComplete="off"
        placeholder="beside the hull"
        value={typed ?? entryText(buttlineMm, 'length', units)}
        aria-invalid={fault !== null || undefined}
        aria-describedby={fault === null ? undefined : `${id}-fault`}
        onChange={({ target }) => setTyped(target.value)}
        onBlur={enter}
        onKeyDown={({ key }) => {
          if (key === 'Enter') enter();
          if (key === 'Escape') {
            setTyped(null);
            setFault(null);
          }
        }}
      />
      {fault !== null && (
        <p className="clash" id={`${id}-fault`} role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}
