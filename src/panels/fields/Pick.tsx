import './fields.css';
import { type ReactNode, useId } from 'react';
import type { Asked } from '../../model/glossary/glossary';
import { Term } from '../Term';

interface PickProps<T extends string> {
  readonly label: string;
  /** The word that its label is. */
  readonly term?: Asked | undefined;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onPick: (value: T) => void;
  /** Drawn before the words that are chosen. */
  readonly mark?: ReactNode;
  /** What stands below: why a choice was refused. */
  readonly children?: ReactNode;
}

/** One of a few, with its name. */
export function Pick<T extends string>({
  label,
  term,
  value,
  options,
  onPick,
  mark,
  children,
}: PickProps<T>) {
  const id = useId();
  return (
    <div className="field">
      {term ? <Term of={term}>{label}</Term> : <label htmlFor={id}>{label}</label>}
      <span className="entry">
        {mark}
        <select
          id={id}
          aria-label={term && label}
          value={value}
          onChange={(event) => onPick(event.target.value as T)}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      </span>
      {children}
    </div>
  );
}
