import type { Aircraft } from '../../model/document/types';
import { EditButton } from '../fields/EditButton';
import { Icon } from '../icons';

interface RemoveButtonProps {
  /** What it takes away, as read aloud. */
  readonly label: string;
  readonly step: string;
  readonly edit: (aircraft: Aircraft) => Aircraft;
}

/** At the end of a row of readings: takes it away. */
export function RemoveButton({ label, step, edit }: RemoveButtonProps) {
  return (
    <EditButton className="button bare" aria-label={label} step={step} edit={edit}>
      <Icon name="bin" />
    </EditButton>
  );
}
