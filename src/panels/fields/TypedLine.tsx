import { type ComponentProps, useId } from 'react';

interface TypedLineProps extends ComponentProps<'input'> {
  readonly label: string;
  /** What is wrong with what is typed, in a sentence. */
  readonly fault?: string | null | undefined;
}

/** A labelled line in which a figure is typed, and below it what is wrong with it. */
export function TypedLine({ label, fault, ...input }: TypedLineProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="entry">
        <input
          type="text"
          autoComplete="off"
          spellCheck={false}
          className="figure"
          {...input}
          id={id}
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
