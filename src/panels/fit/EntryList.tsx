import type { ReactNode } from 'react';
import type { Aircraft } from '../../model/document/types';
import { useCommitted, useSteadyList } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import type { Edited } from '../fields/useEdit';
import { Icon } from '../icons';

interface EntryListProps {
  readonly title: string;
  /** One of them, as in "Add a bay". */
  readonly noun: string;
  readonly count: (aircraft: Aircraft) => number;
  readonly headOf: (aircraft: Aircraft, at: number) => string;
  /** A sentence where one cannot be added. */
  readonly add: (aircraft: Aircraft) => Edited;
  readonly remove: (aircraft: Aircraft, at: number) => Aircraft;
  /** Of the heading; under a section's own it is 4. */
  readonly level?: 3 | 4;
  /** More buttons beside "Add". */
  readonly more?: ReactNode;
  readonly children: (at: number) => ReactNode;
}

/** A list of like things, each folded to its name, with all its figures inside. */
export function EntryList(props: EntryListProps) {
  const { title, noun, count, headOf, add, remove, level = 4, more, children } = props;
  const Heading = `h${level}` as const;
  // Drawn again only when one of the heads reads differently.
  const heads = useCommitted(
    useSteadyList((aircraft: Aircraft) =>
      Array.from({ length: count(aircraft) }, (_, at) => headOf(aircraft, at)),
    ),
  );
  return (
    <div className="fit-list">
      <Heading>{title}</Heading>
      {heads.map((head, at) => (
        <details key={at} className="fit-entry">
          <summary>{head}</summary>
          <div>
            {children(at)}
            <EditButton
              aria-label={`Remove ${head}`}
              step={`Remove ${head}`}
              edit={(aircraft) => remove(aircraft, at)}
            >
              <Icon name="bin" /> Remove
            </EditButton>
          </div>
        </details>
      ))}
      <div className="fit-buttons">
        <EditButton step={`Add a ${noun}`} edit={add}>
          <Icon name="plus" /> Add a {noun}
        </EditButton>
        {more}
      </div>
    </div>
  );
}

/** A list with one of its entries changed. */
export const changedAt = <T,>(list: readonly T[] | undefined, at: number, change: Partial<T>): readonly T[] =>
  (list ?? []).map((entry, index) => (index === at ? { ...entry, ...change } : entry));

/** A list without one of its entries. */
export const withoutAt = <T,>(list: readonly T[] | undefined, at: number): readonly T[] =>
  (list ?? []).filter((_, index) => index !== at);
