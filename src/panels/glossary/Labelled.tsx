import { wordOfLabel } from '../../model/glossary/labels';
import { Term } from '../Term';

/** A head or a name of a table, as a word of the glossary where it is one. */
export function Labelled({ children: label }: { readonly children: string }) {
  const word = wordOfLabel(label);
  return word ? <Term of={word}>{label}</Term> : label;
}
