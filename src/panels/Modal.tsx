import { type ReactNode, useId, useLayoutEffect, useRef } from 'react';
import { Icon } from './icons';

interface ModalProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly wide?: boolean;
  readonly children: ReactNode;
}

/** A native modal dialog, open for as long as it is rendered. Escape and a click outside close it. */
export function Modal({ title, onClose, wide = false, children }: ModalProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  // Closed while it still stands in the page: so the focus goes back to where it was.
  useLayoutEffect(() => {
    const shown = dialog.current;
    if (shown && !shown.open) shown.showModal();
    return () => shown?.close();
  }, []);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Escape closes a native dialog
    <dialog
      ref={dialog}
      className={wide ? 'modal wide' : 'modal'}
      aria-labelledby={titleId}
      onCancel={(event) => {
        // Not that of a dialog that was opened from within.
        if (event.target !== dialog.current) return;
        event.preventDefault();
        onClose();
      }}
      onClick={(event) => {
        if (event.target === dialog.current) onClose();
      }}
    >
      <div className="modal-sheet">
        <div className="modal-head">
          <h2 id={titleId}>{title}</h2>
          <button type="button" className="button bare" aria-label="Close" onClick={onClose}>
            <Icon name="cross" />
          </button>
        </div>
        <div className="modal-body">{children}</div>
      </div>
    </dialog>
  );
}
