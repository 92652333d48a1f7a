import type { Quantity } from '../../model/units';
import { useView } from '../../store/react';
import { entryText, readEntry } from '../fields/entryText';
import { TypedLine } from '../fields/TypedLine';
import { useEntry } from '../fields/useEntry';

interface OwnMeasureProps {
  readonly label: string;
  readonly quantity: Quantity;
  /** In the file's unit. */
  readonly value: number;
  readonly onChange: (value: number) => void;
}

/** A figure that belongs to a question and not to the aircraft. */
export function OwnMeasure({ label, quantity, value, onChange }: OwnMeasureProps) {
  const units = useView((view) => view.units);
  const entry = useEntry(entryText(value, quantity, units), (text) => {
    const typed = readEntry(text, quantity, units, false);
    if (!typed.ok) return typed.sentence;
    if (typed.value !== null) onChange(typed.value);
    return null;
  });
  return <TypedLine label={label} fault={entry.fault} {...entry.input} />;
}
