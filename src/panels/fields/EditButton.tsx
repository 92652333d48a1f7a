import './fields.css';
import { type ButtonHTMLAttributes, useState } from 'react';
import type { Aircraft } from '../../model/document/types';
import { type Edited, useEdit } from './useEdit';

interface EditButtonProps extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'onClick'> {
  /** What undo would take back. */
  readonly step: string;
  readonly edit: (aircraft: Aircraft) => Edited;
  /** Called once the edit was made. */
  readonly onDone?: () => void;
}

/** A button that makes one edit, or says beside itself why it cannot. */
export function EditButton({ step, edit, onDone, className = 'button', ...button }: EditButtonProps) {
  const commit = useEdit();
  const [fault, setFault] = useState<string | null>(null);
  const make = () => {
    const refused = commit(step, edit);
    setFault(refused);
    if (refused === null) onDone?.();
  };
  return (
    <>
      <button type="button" className={className} {...button} onClick={make} />
      <Refusal fault={fault} />
    </>
  );
}

/** Why something that was tried was not done; nothing while there is no reason. */
export const Refusal = ({ fault }: { readonly fault: string | null }) =>
  fault && (
    <p className="fault" role="alert">
      {fault}
    </p>
  );
