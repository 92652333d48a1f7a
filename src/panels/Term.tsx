import { type ReactNode, useState } from 'react';
import { createPortal } from 'react-dom';
import type { Asked } from '../model/glossary/glossary';
import { later } from './later';

/** The glossary, at one of its words or at all of them. */
export const Words = later(
  () => import('./glossary/Words'),
  (module) => module.Words,
  { place: 'The glossary' },
);

/** A word where it stands on the screen; pressed, it says what it means. */
export function Term({ of, children }: { readonly of: Asked; readonly children: ReactNode }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="term" aria-haspopup="dialog" onClick={() => setOpen(true)}>
        {children}
      </button>
      {open && createPortal(<Words first={of} onClose={() => setOpen(false)} />, document.body)}
    </>
  );
}
