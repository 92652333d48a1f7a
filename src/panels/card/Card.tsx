import './card.css';
import { itemById, replaceStructure, structureById, updatePart, updateTank } from '../../model/edit';
import type { Aircraft } from '../../model/types';
import { useCommitted, useView } from '../../store/react';
import { TextEntry } from '../fields/TextEntry';
import { Icon, RoleMark } from '../icons';
import { later } from '../later';
import { AircraftCard } from './AircraftCard';

const PartCard = later(async () => (await import('./PartCard')).PartCard);
const TankCard = later(async () => (await import('./TankCard')).TankCard);
const StructureCard = later(async () => (await import('./StructureCard')).StructureCard);

type Kind = 'part' | 'tank' | 'structure' | null;

function kindOf(aircraft: Aircraft, id: string | null): Kind {
  if (id === null) return null;
  if (aircraft.parts.some((part) => part.id === id)) return 'part';
  if (aircraft.tanks.some((tank) => tank.id === id)) return 'tank';
  return structureById(aircraft, id) ? 'structure' : null;
}

function rename(aircraft: Aircraft, id: string, name: string): Aircraft {
  const piece = structureById(aircraft, id);
  if (piece) return replaceStructure(aircraft, { ...piece, name });
  return aircraft.tanks.some((tank) => tank.id === id)
    ? updateTank(aircraft, id, { name })
    : updatePart(aircraft, id, { name });
}

/** The selected thing, or with nothing selected the aircraft itself. */
export function Card({ onClose }: { readonly onClose: () => void }) {
  const id = useView((view) => view.selectedId);
  const kind = useCommitted((aircraft) => kindOf(aircraft, id));
  const name = useCommitted((aircraft) =>
    id === null ? '' : ((itemById(aircraft, id) ?? structureById(aircraft, id))?.name ?? ''),
  );
  const role = useCommitted((aircraft) => aircraft.parts.find((part) => part.id === id)?.role);
  if (id === null || kind === null) return <AircraftCard />;
  return (
    <div className="card" key={id}>
      <header>
        <h2 className="unseen">{name}</h2>
        <RoleMark of={kind === 'tank' ? 'fuel' : kind === 'structure' ? 'airframe' : (role ?? 'other')} />
        <TextEntry
          bare
          label="Name"
          step={`Rename ${name}`}
          read={(aircraft) => (itemById(aircraft, id) ?? structureById(aircraft, id))?.name}
          write={(aircraft, text) => rename(aircraft, id, text)}
        />
        <button type="button" className="button bare" aria-label="Close, show the aircraft" onClick={onClose}>
          <Icon name="cross" />
        </button>
      </header>
      {kind === 'part' && <PartCard id={id} name={name} />}
      {kind === 'tank' && <TankCard id={id} name={name} />}
      {kind === 'structure' && <StructureCard id={id} name={name} />}
    </div>
  );
}
