import './fields.css';
import { useId } from 'react';
import type { Aircraft } from '../../model/document/types';
import { useAircraft } from '../../store/react';
import { useEdit } from './useEdit';
import { useEntry } from './useEntry';

interface TextEntryProps {
  readonly label: string;
  readonly read: (aircraft: Aircraft) => string | undefined;
  readonly write: (aircraft: Aircraft, text: string) => Aircraft;
  readonly step: string;
  /** A note of several lines, which may be empty. */
  readonly long?: boolean;
  /** Named for screen readers only. */
  readonly bare?: boolean;
}

/** A name or a note. */
export function TextEntry({ label, read, write, step, long = false, bare = false }: TextEntryProps) {
  const value = useAircraft((aircraft) => read(aircraft) ?? '');
  const edit = useEdit();
  const id = useId();
  const entry = useEntry(value, (text) => {
    const plain = text.trim();
    return plain === '' && !long ? 'It needs a name.' : edit(step, (aircraft) => write(aircraft, plain));
  });
  const { input } = entry;
  return (
    <div className={`field${bare ? ' bare' : ''}${long ? ' long' : ''}`}>
      <label htmlFor={id} className={bare ? 'unseen' : undefined}>
        {label}
      </label>
      <span className="entry">
        {long ? (
          <textarea id={id} rows={3} {...input} />
        ) : (
          <input id={id} type="text" autoComplete="off" {...input} />
        )}
      </span>
      {entry.fault && (
        <p id={entry.faultId} className="fault" role="alert">
          {entry.fault}
        </p>
      )}
    </div>
  );
}
