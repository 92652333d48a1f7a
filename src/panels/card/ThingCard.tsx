import { itemById, replaceStructure, structureById, updatePart, updateTank } from '../../model/document/edit';
import { renameLead } from '../../model/document/fitEdits';
import type { Aircraft } from '../../model/document/types';
import { useCommitted } from '../../store/react';
import { TextEntry } from '../fields/TextEntry';
import { Icon, RoleMark } from '../icons';
import { later } from '../later';

const PartCard = later(
  () => import('./PartCard'),
  (module) => module.PartCard,
  { place: 'The card of the part' },
);
const TankCard = later(
  () => import('./TankCard'),
  (module) => module.TankCard,
  { place: 'The card of the tank' },
);
const LeadCard = later(
  () => import('../fit/LeadCard'),
  (module) => module.LeadCard,
  { place: 'The card of the lead' },
);
const StructureCard = later(
  () => import('./StructureCard'),
  (module) => module.StructureCard,
  { place: 'The card of the structure' },
);

type Kind = 'part' | 'tank' | 'structure' | 'lead' | null;

const leadById = ({ leads }: Aircraft, id: string) => leads?.find((lead) => lead.id === id);

/** Anything aboard that has a card. */
const thingById = (aircraft: Aircraft, id: string) =>
  itemById(aircraft, id) ?? structureById(aircraft, id) ?? leadById(aircraft, id);

function kindOf(aircraft: Aircraft, id: string): Kind {
  if (aircraft.parts.some((part) => part.id === id)) return 'part';
  if (aircraft.tanks.some((tank) => tank.id === id)) return 'tank';
  if (structureById(aircraft, id)) return 'structure';
  return leadById(aircraft, id) ? 'lead' : null;
}

function rename(aircraft: Aircraft, id: string, name: string): Aircraft {
  const piece = structureById(aircraft, id);
  if (piece) return replaceStructure(aircraft, { ...piece, name });
  if (leadById(aircraft, id)) return renameLead(aircraft, id, name);
  return aircraft.tanks.some((tank) => tank.id === id)
    ? updateTank(aircraft, id, { name })
    : updatePart(aircraft, id, { name });
}

interface ThingCardProps {
  readonly id: string;
  readonly onClose: () => void;
}

/** The card of one item aboard. */
export function ThingCard({ id, onClose }: ThingCardProps) {
  const kind = useCommitted((aircraft) => kindOf(aircraft, id));
  const name = useCommitted((aircraft) => thingById(aircraft, id)?.name ?? '');
  const role = useCommitted((aircraft) => aircraft.parts.find((part) => part.id === id)?.role);
  if (kind === null) return null;
  return (
    <div className="card" key={id}>
      <header>
        <h2 className="unseen">{name}</h2>
        <RoleMark of={kind === 'tank' ? 'fuel' : kind === 'structure' ? 'airframe' : (role ?? 'other')} />
        <TextEntry
          bare
          label="Name"
          step={`Rename ${name}`}
          read={(aircraft) => thingById(aircraft, id)?.name}
          write={(aircraft, text) => rename(aircraft, id, text)}
        />
        <button type="button" className="button bare" aria-label="Close, show the aircraft" onClick={onClose}>
          <Icon name="cross" />
        </button>
      </header>
      {kind === 'part' && <PartCard id={id} name={name} />}
      {kind === 'tank' && <TankCard id={id} name={name} />}
      {kind === 'structure' && <StructureCard id={id} name={name} />}
      {kind === 'lead' && <LeadCard id={id} />}
    </div>
  );
}
