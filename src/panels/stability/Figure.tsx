import type { ReactNode } from 'react';
import type { Asked } from '../../model/glossary/glossary';
import { Term } from '../Term';

interface FigureProps {
  readonly name: string;
  readonly strong?: boolean;
  /** The word that its name is. */
  readonly term?: Asked;
  /** The figure; what stands in a span goes small beside it. */
  readonly children: ReactNode;
}

/** A named figure in a list of figures. */
export function Figure({ name, strong = false, term, children }: FigureProps) {
  return (
    <div data-strong={strong || undefined}>
      <dt>{term ? <Term of={term}>{name}</Term> : name}</dt>
      <dd className="figure">{children}</dd>
    </div>
  );
}
