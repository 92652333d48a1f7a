import './fields.css';
import { useId, useRef } from 'react';
import type { Aircraft } from '../../model/document/types';
import type { Asked } from '../../model/glossary/glossary';
import type { Quantity } from '../../model/units';
import { useView } from '../../store/react';
import { useRestingValue, useWritten } from '../Live';
import { Term } from '../Term';
import { entryText, readEntry } from './entryText';
import { type Edited, useEdit } from './useEdit';
import { useEntry } from './useEntry';

interface MeasureProps {
  readonly label: string;
  readonly quantity: Quantity;
  readonly read: (aircraft: Aircraft) => number | null | undefined;
  /** The value comes in the file's unit; or a sentence that says why it cannot be so. */
  readonly write: (aircraft: Aircraft, value: number) => Edited;
  /** What an empty field means; without it a field must hold a figure. */
  readonly empty?: { readonly means: string; readonly write: (aircraft: Aircraft) => Aircraft };
  /** What undo would take back. */
  readonly step: string;
  /** Shown and typed from here, in the file's unit. */
  readonly from?: number;
  /** A unit that has no quantity of its own. */
  readonly suffix?: string;
  /** The word that its label is. */
  readonly term?: Asked | undefined;
  /** Named for screen readers only. */
  readonly bare?: boolean;
}

/** A figure that a person types in whatever unit they like. */
export function Measure(props: MeasureProps) {
  const { label, quantity, read, write, empty, step, from = 0, suffix, bare = false, term } = props;
  const units = useView((view) => view.units);
  const value = useRestingValue(({ document }) => read(document.current()) ?? null);
  const edit = useEdit();
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const textOf = (figure: number | null) =>
    entryText(figure === null ? null : figure - from, quantity, units);
  const shown = textOf(value);
  const entry = useEntry(shown, (text) => {
    const typed = readEntry(text, quantity, units, empty !== undefined);
    if (!typed.ok) return typed.sentence;
    const { value: figure } = typed;
    if (figure === null) return edit(step, (aircraft) => empty?.write(aircraft) ?? aircraft);
    return edit(step, (aircraft) => write(aircraft, figure + from));
  });
  // Under the hand the figure is written by hand, so that a drag renders none.
  useWritten(({ document }) => {
    if (entry.isTyped || !input.current) return;
    const now = textOf(read(document.current()) ?? null);
    if (input.current.value !== now) input.current.value = now;
  });
  return (
    <div className={bare ? 'field bare' : 'field'}>
      {term ? (
        <Term of={term}>{label}</Term>
      ) : (
        <label htmlFor={id} className={bare ? 'unseen' : undefined}>
          {label}
        </label>
      )}
      <span className="entry">
        <input
          ref={input}
          id={id}
          type="text"
          inputMode="text"
          autoComplete="off"
          spellCheck={false}
          className="figure"
          placeholder={empty?.means}
          aria-label={term && label}
          {...entry.input}
        />
        {suffix && <span className="suffix">{suffix}</span>}
      </span>
      {entry.fault && (
        <p id={entry.faultId} className="fault" role="alert">
          {entry.fault}
        </p>
      )}
    </div>
  );
}
