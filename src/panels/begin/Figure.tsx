import { useState } from 'react';
import type { Asked } from '../../model/glossary/glossary';
import type { Quantity } from '../../model/units';
import { useView } from '../../store/react';
import { entryText, readEntry } from '../fields/entryText';
import { TypedLine } from '../fields/TypedLine';

interface FigureProps {
  readonly label: string;
  readonly term?: Asked | undefined;
  readonly quantity: Quantity;
  /** Null while nothing is typed. */
  readonly value: number | null;
  /** What stands for it until then, in words; shown in the empty field. */
  readonly meanwhile: string;
  readonly onValue: (value: number | null) => void;
  readonly onLook?: (looking: boolean) => void;
  /** Why the figure cannot be so beside the others. */
  readonly fault?: string | undefined;
}

/** A figure of the new aircraft, taken with every key so that the drawing follows; in whatever unit is typed. */
export function Figure({ label, term, quantity, value, meanwhile, onValue, onLook, fault }: FigureProps) {
  const units = useView((view) => view.units);
  const [typed, setTyped] = useState<string | null>(null);
  const [unread, setUnread] = useState<string | null>(null);
  const wrong = unread ?? fault;
  return (
    <TypedLine
      label={label}
      term={term}
      fault={typed === null ? wrong : unread}
      placeholder={meanwhile}
      value={typed ?? entryText(value, quantity, units)}
      aria-invalid={wrong !== undefined && typed === null}
      onFocus={() => onLook?.(true)}
      onChange={(event) => {
        const text = event.target.value;
        setTyped(text);
        const entry = readEntry(text, quantity, units, true);
        if (!entry.ok) return;
        setUnread(null);
        onValue(entry.value);
      }}
      onBlur={() => {
        onLook?.(false);
        if (typed === null) return;
        const entry = readEntry(typed, quantity, units, true);
        setUnread(entry.ok ? null : entry.sentence);
        if (entry.ok) setTyped(null);
      }}
    />
  );
}
