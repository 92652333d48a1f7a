import './fields.css';
import { type ReactNode, useId } from 'react';

interface PickProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onPick: (value: T) => void;
  /** Drawn before the words that are chosen. */
  readonly mark?: ReactNode;
  /** What stands below: why a choice was refused. */
  readonly children?: ReactNode;
}

/** One of a few, with its name. */
export function Pick<T extends string>({ label, value, options, onPick, mark, children }: PickProps<T>) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="entry">
        {mark}
        <select id={id} value={value} onChange={(event) => onPick(event.target.value as T)}>
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
