import { useState, useSyncExternalStore } from 'react';
import { shownText } from '../../model/document/names';
import type { FleetCard } from '../../store/fleetStore';
import { useBench } from '../../store/react';
import { signs } from '../answer/signs';
import { Refusal } from '../fields/EditButton';
import type { FleetActions, Refused } from '../fleetActions';
import { Icon } from '../icons';
import { FromAbove } from '../outlines/FromAbove';
import { useReadings } from '../readings';
import { whenWords } from '../when';
import { Rename } from './Rename';

interface CardsProps {
  readonly cards: readonly FleetCard[];
  readonly actions: FleetActions;
}

/** One card for each aircraft; its picture puts it on the bench. */
export function FleetCards({ cards, actions }: CardsProps) {
  const { document } = useBench();
  const here = useSyncExternalStore(document.subscribe, () => document.api.getState().fleetId);
  return (
    <ul className="fleet-cards">
      {cards.map((card) => (
        <Card key={card.id} card={card} isHere={card.id === here} actions={actions} />
      ))}
    </ul>
  );
}

const WIDE = 240;
const HIGH = 150;

interface CardProps {
  readonly card: FleetCard;
  readonly isHere: boolean;
  readonly actions: FleetActions;
}

function Card({ card, isHere, actions }: CardProps) {
  const { id, name, massG, picture, changedAtMs } = card;
  const say = useReadings();
  const [renaming, setRenaming] = useState(false);
  const [fault, setFault] = useState<Refused>(null);
  const shown = shownText(name);
  const run = (action: () => Promise<Refused>) => async () => setFault(await action());
  return (
    <li className="fleet-card" data-here={isHere || undefined} data-fleet={id}>
      <button
        type="button"
        className="fleet-picture"
        aria-label={isHere ? `On the bench: ${shown}` : `Put ${shown} on the bench`}
        onClick={run(() => actions.open(id))}
      >
        <FromAbove outlines={picture} wide={WIDE} high={HIGH} />
        {isHere && <span className="fleet-here">On the bench</span>}
      </button>
      {renaming ? (
        <Rename
          label={`New name of ${shown}`}
          name={name}
          onDone={() => setRenaming(false)}
          rename={(next) => actions.rename(id, next)}
        />
      ) : (
        <h3>{shown}</h3>
      )}
      <p className="fleet-facts">
        <span className="figure">{massG === null ? 'No mass yet' : say.mass(massG)}</span>
        <Tone card={card} />
      </p>
      <div className="fleet-row">
        <time dateTime={new Date(changedAtMs).toISOString()}>{whenWords(changedAtMs, Date.now())}</time>
        <button
          type="button"
          className="button bare"
          aria-label={`Rename ${shown}`}
          title="Rename"
          onClick={() => setRenaming(!renaming)}
        >
          <Icon name="pen" />
        </button>
        <button
          type="button"
          className="button bare"
          aria-label={`Duplicate ${shown}`}
          title="Duplicate"
          onClick={run(() => actions.duplicate(id))}
        >
          <Icon name="copy" />
        </button>
        <button
          type="button"
          className="button bare"
          aria-label={`Delete ${shown}`}
          title="Delete"
          onClick={run(() => actions.remove(id))}
        >
          <Icon name="bin" />
        </button>
      </div>
      <Refusal fault={fault} />
    </li>
  );
}

/** As judged when it was last on the bench. */
function Tone({ card: { tone } }: { readonly card: FleetCard }) {
  if (!tone) return <span className="fleet-tone">Not judged yet</span>;
  const { icon, word } = signs[tone];
  return (
    <span className="fleet-tone" data-tone={tone}>
      <Icon name={icon} />
      {word}
    </span>
  );
}
