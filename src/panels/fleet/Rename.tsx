import { type FormEvent, useState } from 'react';
import { LONGEST_NAME } from '../../model/document/names';
import { Refusal } from '../fields/EditButton';
import type { Refused } from '../fleetActions';

interface RenameProps {
  readonly label: string;
  readonly name: string;
  readonly rename: (name: string) => Promise<Refused>;
  readonly onDone: () => void;
}

/** A name that is being typed: Enter takes it, Escape leaves it as it was. */
export function Rename({ label, name, rename, onDone }: RenameProps) {
  const [typed, setTyped] = useState(name);
  const [fault, setFault] = useState<Refused>(null);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const refused = typed.trim() === name ? null : await rename(typed.trim());
    setFault(refused);
    if (refused === null) onDone();
  };
  return (
    <form className="rename" onSubmit={submit}>
      <input
        aria-label={label}
        value={typed}
        maxLength={LONGEST_NAME}
        // biome-ignore lint/a11y/noAutofocus: the person has just asked to type here
        autoFocus
        onFocus={(event) => event.target.select()}
        onChange={(event) => setTyped(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Escape') onDone();
        }}
      />
      <button type="submit" className="button">
        Rename
      </button>
      <Refusal fault={fault} />
    </form>
  );
}
