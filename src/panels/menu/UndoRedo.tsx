import { useSyncExternalStore } from 'react';
import { useBench } from '../../store/react';
import { Icon } from '../icons';

/** Undo and redo, each saying what it would take back or do again. */
export function UndoRedo() {
  const { document } = useBench();
  const undoes = useSyncExternalStore(
    document.subscribe,
    () => document.api.getState().past.at(-1)?.label ?? '',
  );
  const redoes = useSyncExternalStore(
    document.subscribe,
    () => document.api.getState().future.at(-1)?.label ?? '',
  );
  const undo = undoes ? `Undo: ${undoes}` : 'Nothing to undo';
  const redo = redoes ? `Redo: ${redoes}` : 'Nothing to redo';
  return (
    <div className="undo-redo">
      <button
        type="button"
        className="button bare"
        disabled={!undoes}
        title={undo}
        aria-label={undo}
        onClick={document.undo}
      >
        <Icon name="undo" />
      </button>
      <button
        type="button"
        className="button bare"
        disabled={!redoes}
        title={redo}
        aria-label={redo}
        onClick={document.redo}
      >
        <Icon name="redo" />
      </button>
    </div>
  );
}
