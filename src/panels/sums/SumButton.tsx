import './sums.css';
import { lazy, type ReactNode, Suspense, useState } from 'react';
import { createPortal } from 'react-dom';
import type { Figure } from '../../model/words/workingSheet';

const WorkingDialog = lazy(() =>
  import('./WorkingDialog').then((module) => ({ default: module.WorkingDialog })),
);

interface SumButtonProps {
  readonly figure: Figure;
  readonly name: string;
  readonly children: ReactNode;
}

/** A figure that opens into the sum that made it. */
export function SumButton({ figure, name, children }: SumButtonProps) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button
        type="button"
        className="sum-button"
        title="Show the working"
        aria-haspopup="dialog"
        onClick={() => setOpen(true)}
      >
        {children}
        <span className="unseen">: show the working of {name}</span>
      </button>
      {open &&
        createPortal(
          <Suspense fallback={null}>
            <WorkingDialog first={figure} onClose={() => setOpen(false)} />
          </Suspense>,
          // Away from the figure, whose type the dialog would take on.
          document.body,
        )}
    </>
  );
}
