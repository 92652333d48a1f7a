import './top.css';
import type { FileActions } from '../fileActions';
import { AppMenu } from '../menu/AppMenu';
import { UndoRedo } from '../menu/UndoRedo';
import type { OpenDialog } from '../openDialog';
import { PlaceNav } from '../places/PlaceNav';

interface TopBarProps {
  readonly files: FileActions;
  readonly onSheet: (sheet: OpenDialog) => void;
}

/** The aircraft's name with all that is seldom needed behind it; the places; the step back and forth; what to heed. */
export function TopBar({ files, onSheet }: TopBarProps) {
  return (
    <div className="top-bar">
      <AppMenu files={files} onSheet={onSheet} />
      <PlaceNav />
      <UndoRedo />
      <button
        type="button"
        className="link"
        aria-label="Before the first flight"
        onClick={() => onSheet('cautions')}
      >
        First flight
      </button>
      <button
        type="button"
        className="button bare"
        aria-label="Keys"
        title="Keys"
        onClick={() => onSheet('shortcuts')}
      >
        ?
      </button>
    </div>
  );
}
