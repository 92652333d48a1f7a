import './fold.css';
import type { ReactNode } from 'react';
import type { Bench } from '../../store/bench';
import { useBench, useView } from '../../store/react';
import { Icon } from '../icons';
import { Live } from '../Live';

interface FoldProps {
  /** Unique among folds; whether it is open is remembered under it. */
  readonly id: string;
  readonly title: string;
  /** What is inside in one line, kept up to date while folded. */
  readonly summary?: (bench: Bench) => string;
  readonly openAtFirst?: boolean;
  readonly children: ReactNode;
}

/** A section of a card under its title and a line of what is inside. What is folded is not even made. */
export function Fold({ id, title, summary, openAtFirst = false, children }: FoldProps) {
  const bench = useBench();
  const open = useView((view) => view.folds[id] ?? openAtFirst);
  return (
    <section className="fold" data-fold={id} data-open={open || undefined}>
      <h3>
        <button
          type="button"
          aria-expanded={open}
          onClick={() => bench.view.setState(({ folds }) => ({ folds: { ...folds, [id]: !open } }))}
        >
          <span>{title}</span>
          {summary && (
            <span className="fold-summary figure">
              <Live read={summary} />
            </span>
          )}
          <Icon name={open ? 'up' : 'down'} />
        </button>
      </h3>
      {open && <div className="fold-inside">{children}</div>}
    </section>
  );
}
