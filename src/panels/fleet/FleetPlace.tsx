import './fleet.css';
import { use, useDeferredValue, useState } from 'react';
import { useCommitted, useFleet, usePiece } from '../../store/react';
import { FilesContext } from '../filesContext';
import type { FleetActions } from '../fleetActions';
import { Icon } from '../icons';
import { NotFetched } from '../trouble/NotFetched';
import { FleetCards } from './FleetCards';
import { FleetFoot } from './FleetFoot';
import { type FleetOrder, orders, shownCards } from './shownCards';

/** Every aircraft that the browser keeps, one of them on the bench. */
export function FleetPlace() {
  const files = use(FilesContext);
  if (!files) throw new Error('The fleet needs the files around it');
  const { piece: actions, failure } = usePiece(files.fleet);
  return (
    <main className="place fleet" data-testid="fleet">
      {failure && <NotFetched place="The fleet" onRetry={files.fleet.retry} />}
      {actions && <Fleet actions={actions} />}
    </main>
  );
}

function Fleet({ actions }: { readonly actions: FleetActions }) {
  const cards = useFleet((fleet) => fleet.cards);
  const isReading = useFleet((fleet) => fleet.where === 'reading');
  const name = useCommitted((aircraft) => aircraft.name);
  const [wanted, setWanted] = useState('');
  const [order, setOrder] = useState<FleetOrder>('changed');
  const shown = shownCards(cards, useDeferredValue(wanted), order);
  const count = cards.filter(({ deletedAtMs }) => deletedAtMs === null).length;
  return (
    <>
      <header className="fleet-head">
        <h2>Fleet</h2>
        <label className="fleet-search">
          <Icon name="search" />
          <input
            type="search"
            aria-label="Search the fleet by name"
            placeholder="Name"
            value={wanted}
            onChange={(event) => setWanted(event.target.value)}
          />
        </label>
        <label className="fleet-order">
          <span>Order</span>
          <select value={order} onChange={(event) => setOrder(event.target.value as FleetOrder)}>
            {orders.map(({ id, label }) => (
              <option key={id} value={id}>
                {label}
              </option>
            ))}
          </select>
        </label>
        <p className="fleet-count" role="status">
          {shown.length === count ? `${count} aircraft` : `${shown.length} of ${count} aircraft`}
        </p>
      </header>
      {count === 0 && !isReading && (
        <p className="fleet-empty">
          Nothing is kept yet. {name} comes here by itself with the first change that you make to it; so does
          every aircraft that you begin or open.
        </p>
      )}
      {count > 0 && shown.length === 0 && (
        <p className="fleet-empty">No aircraft has “{wanted}” in its name.</p>
      )}
      <FleetCards cards={shown} actions={actions} />
      <FleetFoot actions={actions} />
    </>
  );
}
