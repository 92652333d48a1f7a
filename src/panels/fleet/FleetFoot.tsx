import { useState } from 'react';
import { shownText } from '../../model/document/names';
import type { FleetState } from '../../store/fleetStore';
import { useFleet } from '../../store/react';
import { Refusal } from '../fields/EditButton';
import type { FleetActions, Refused } from '../fleetActions';
import { whenWords } from '../when';

/** Where the fleet is kept and how surely, the way out and in as one file, and what was deleted. */
export function FleetFoot({ actions }: { readonly actions: FleetActions }) {
  const where = useFleet((fleet) => fleet.where);
  const promised = useFleet((fleet) => fleet.promised);
  const trouble = useFleet((fleet) => fleet.trouble);
  const [fault, setFault] = useState<Refused>(null);
  const run = (action: () => Promise<Refused>) => async () => setFault(await action());
  return (
    <footer className="fleet-foot">
      <p data-bad={trouble !== null || undefined}>{trouble ?? keptWords(where, promised)}</p>
      <div className="fleet-ways">
        <button type="button" className="button" onClick={run(actions.saveAll)}>
          Save the fleet as a file
        </button>
        <button type="button" className="button" onClick={run(actions.takeIn)}>
          Take in a fleet file…
        </button>
      </div>
      <Refusal fault={fault} />
      <Deleted actions={actions} />
    </footer>
  );
}

function keptWords(where: FleetState['where'], promised: boolean | null): string {
  if (where === 'reading') return 'The browser’s store is being read.';
  const kept = 'Kept by this browser, for this address, on this machine.';
  if (promised) return `${kept} The browser has promised not to clear it by itself.`;
  const may = 'It may clear it when the disk runs short, or when you clear its data';
  return `${kept} ${may}: save the fleet as a file now and then.`;
}

function Deleted({ actions }: { readonly actions: FleetActions }) {
  const cards = useFleet((fleet) => fleet.cards);
  const [asked, setAsked] = useState<string | null>(null);
  const [fault, setFault] = useState<Refused>(null);
  const deleted = cards
    .filter(({ deletedAtMs }) => deletedAtMs !== null)
    .sort((a, b) => (b.deletedAtMs ?? 0) - (a.deletedAtMs ?? 0));
  if (deleted.length === 0) return null;
  return (
    <details className="fleet-deleted">
      <summary>Deleted ({deleted.length})</summary>
      <ul>
        {deleted.map(({ id, name, deletedAtMs }) => (
          <li key={id}>
            <span>
              {shownText(name)}, {whenWords(deletedAtMs ?? 0, Date.now())}
            </span>
            <button
              type="button"
              className="button"
              aria-label={`Take back ${shownText(name)}`}
              onClick={async () => setFault(await actions.restore(id))}
            >
              Take back
            </button>
            <button
              type="button"
              className="button"
              aria-label={`Delete ${shownText(name)} for good`}
              onClick={async () => {
                if (asked !== id) return setAsked(id);
                setAsked(null);
                setFault(await actions.forget(id));
              }}
            >
              {asked === id ? 'Really, for good' : 'Delete for good'}
            </button>
          </li>
        ))}
      </ul>
      <Refusal fault={fault} />
    </details>
  );
}
