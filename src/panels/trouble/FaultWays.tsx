import { useContext, useSyncExternalStore } from 'react';
import { useBench } from '../../store/react';
import { FilesContext } from '../filesContext';

/** The ways on from a fault that the aircraft on the bench may have brought: back a step, again, keep it, leave it. */
export function FaultWays({ onRetry }: { readonly onRetry: () => void }) {
  const { document } = useBench();
  const files = useContext(FilesContext);
  const undoes = useSyncExternalStore(document.subscribe, () => document.api.getState().past.at(-1)?.label);
  return (
    <>
      {undoes !== undefined && (
        <button type="button" className="button" onClick={document.undo}>
          Undo: {undoes}
        </button>
      )}
      <button type="button" className="button" onClick={onRetry}>
        Retry
      </button>
      {files && (
        <>
          <button type="button" className="button" onClick={() => void files.saveFile()}>
            Save what is on the bench
          </button>
          <button type="button" className="button" onClick={files.newAircraft}>
            Start clean
          </button>
        </>
      )}
    </>
  );
}
