import type { ReactNode } from 'react';

interface FigureProps {
  readonly name: string;
  readonly strong?: boolean;
  /** The figure; what stands in a span goes small beside it. */
  readonly children: ReactNode;
}

/** A named figure in a list of figures. */
export function Figure({ name, strong = false, children }: FigureProps) {
  return (
    <div data-strong={strong || undefined}>
      <dt>{name}</dt>
      <dd className="figure">{children}</dd>
    </div>
  );
}
