import { useEffect, useState } from 'react';
import { itemById } from '../../model/document/edit';
import type { Aircraft } from '../../model/document/types';
import type { FittingOrder } from '../../model/fit/fittingOrder';
import { useBench } from '../../store/react';
import { Modal } from '../Modal';

type Search =
  | { readonly state: 'searching' }
  | { readonly state: 'answered'; readonly order: FittingOrder }
  | { readonly state: 'failed'; readonly sentence: string };

/** The order in which all that stands in the hulls can go in, searched for in a worker while the dialog is open. */
export default function OrderDialog({ onClose }: { readonly onClose: () => void }) {
  const { fit, document } = useBench();
  const [aircraft] = useState(() => document.api.getState().committed);
  const [search, setSearch] = useState<Search>({ state: 'searching' });
  const [attempt, setAttempt] = useState(1);
  useEffect(() => {
    let open = true;
    setSearch({ state: 'searching' });
    const searcher = fit.search();
    searcher?.order(aircraft).then(
      (order) => open && order && setSearch({ state: 'answered', order }),
      (error: unknown) =>
        open &&
        setSearch({ state: 'failed', sentence: error instanceof Error ? error.message : String(error) }),
    );
    return () => {
      open = false;
      searcher?.stop();
    };
  }, [aircraft, fit, attempt]);
  return (
    <Modal title="What goes in first" onClose={onClose} wide>
      <div role="status">
        {search.state === 'searching' && (
          <p className="hint">Taking everything out, one after the other, to see what is in whose way…</p>
        )}
        {search.state === 'failed' && <p className="clash">{search.sentence}</p>}
      </div>
      {search.state === 'failed' && (
        <button type="button" className="button" onClick={() => setAttempt((before) => before + 1)}>
          Retry
        </button>
      )}
      {search.state === 'answered' && <Answer aircraft={aircraft} order={search.order} />}
    </Modal>
  );
}

function Answer({ aircraft, order }: { readonly aircraft: Aircraft; readonly order: FittingOrder }) {
  const nameOf = (id: string) => itemById(aircraft, id)?.name ?? id;
  const hatchOf = (id: string) => aircraft.hatches?.find((hatch) => hatch.id === id)?.name ?? id;
  const after = (id: string) =>
    order.before.filter(({ firstId }) => firstId === id).map(({ thenId }) => nameOf(thenId));
  return (
    <>
      <ol className="fit-order" data-testid="fitting-order">
        {order.order.map(({ id, name, hatchId }) => (
          <li key={id}>
            {name} <span className="hint">through {hatchOf(hatchId)}</span>
            {after(id).length > 0 && <span className="hint">, before {after(id).join(' and ')}</span>}
          </li>
        ))}
      </ol>
      {order.stuck.length > 0 && (
        <>
          <h3>No path found</h3>
          <ul className="fit-order">
            {order.stuck.map(({ id, sentence }) => (
              <li key={id}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
      <p className="hint">
        One order that was found; there may be others. A part for which no path was found may still have one.
        What stands outside the hulls is not in the list.
      </p>
    </>
  );
}
