import type { ReactNode } from 'react';

interface OpenedProps {
  /** What the group is about, as read aloud. */
  readonly legend: string;
  readonly label: string;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
  readonly children: ReactNode;
}

/** A group of questions that its own tick opens. */
export function Opened({ legend, label, open, onOpen, children }: OpenedProps) {
  return (
    <fieldset className="begin-group">
      <legend className="unseen">{legend}</legend>
      <label className="tick begin-open">
        <input type="checkbox" checked={open} onChange={(event) => onOpen(event.target.checked)} />
        {label}
      </label>
      {children}
    </fieldset>
  );
}
