import { type ReactNode, useState } from 'react';
import type { Aircraft } from '../../model/document/types';
import type { Asked } from '../../model/glossary/glossary';
import { useAircraft } from '../../store/react';
import { Refusal } from './EditButton';
import { Pick } from './Pick';
import { useEdit } from './useEdit';

export interface Option {
  readonly value: string;
  readonly label: string;
}

interface ChoiceProps {
  readonly label: string;
  readonly term?: Asked;
  readonly options: readonly Option[];
  readonly read: (aircraft: Aircraft) => string;
  /** A sentence says why it cannot be. */
  readonly write: (aircraft: Aircraft, value: string) => Aircraft | string;
  readonly step: string;
  /** Drawn before the words that are chosen. */
  readonly mark?: ReactNode;
}

/** One of a few. */
export function Choice({ label, term, options, read, write, step, mark }: ChoiceProps) {
  const value = useAircraft(read);
  const edit = useEdit();
  const [fault, setFault] = useState<string | null>(null);
  return (
    <Pick
      label={label}
      term={term}
      value={value}
      options={options}
      mark={mark}
      onPick={(chosen) => setFault(edit(step, (aircraft) => write(aircraft, chosen)))}
    >
      <Refusal fault={fault} />
    </Pick>
  );
}

interface TickProps {
  readonly label: string;
  readonly read: (aircraft: Aircraft) => boolean;
  readonly write: (aircraft: Aircraft, on: boolean) => Aircraft;
  readonly step: string;
}

/** Yes or no. */
export function Tick({ label, read, write, step }: TickProps) {
  const on = useAircraft(read);
  const edit = useEdit();
  const [fault, setFault] = useState<string | null>(null);
  return (
    <>
      <label className="tick">
        <input
          type="checkbox"
          checked={on}
          onChange={(event) => {
            const { checked } = event.target;
            setFault(edit(step, (aircraft) => write(aircraft, checked)));
          }}
        />
        {label}
      </label>
      <Refusal fault={fault} />
    </>
  );
}
