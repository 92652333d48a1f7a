import { type ComponentProps, useId } from 'react';
import type { Asked } from '../../model/glossary/glossary';
import { Term } from '../Term';

interface TypedLineProps extends ComponentProps<'input'> {
  readonly label: string;
  readonly term?: Asked | undefined;
  /** What is wrong with what is typed, in a sentence. */
  readonly fault?: string | null | undefined;
}

/** A labelled line in which a figure is typed, and below it what is wrong with it. */
export function TypedLine({ label, term, fault, ...input }: TypedLineProps) {
  const id = useId();
  return (
    <div className="field">
      {term ? <Term of={term}>{label}</Term> : <label htmlFor={id}>{label}</label>}
      <span className="entry">
        <input
          type="text"
          autoComplete="off"
          spellCheck={false}
          className="figure"
          {...input}
          id={id}
          aria-label={term && label}
          aria-describedby={fault ? `${id}-fault` : undefined}
        />
      </span>
      {fault && (
        <p id={`${id}-fault`} className="fault" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}
