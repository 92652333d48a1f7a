import './sums.css';
import { type ReactNode, useState } from 'react';
import { createPortal } from 'react-dom';
import type { Figure } from '../../model/words/workingSheet';
import { later } from '../later';

const WorkingDialog = later(
  () => import('./WorkingDialog'),
  (module) => module.WorkingDialog,
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
          <WorkingDialog first={figure} onClose={() => setOpen(false)} />,
          // Away from the figure, whose type the dialog would take on.
          document.body,
        )}
    </>
  );
}
