import { useLayoutEffect, useRef } from 'react';
import './card.css';
import { itemById, replaceStructure, structureById, updatePart, updateTank } from '../../model/document/edit';
import { renameLead } from '../../model/document/fitEdits';
import type { Aircraft } from '../../model/document/types';
import { useCommitted, useView } from '../../store/react';
import { TextEntry } from '../fields/TextEntry';
import { Icon, RoleMark } from '../icons';
import { later } from '../later';

const AircraftCard = later(
  () => import('./AircraftCard'),
  (module) => module.AircraftCard,
  { meanwhile: <div className="card" /> },
);
const PartCard = later(
  () => import('./PartCard'),
  (module) => module.PartCard,
);
const TankCard = later(
  () => import('./TankCard'),
  (module) => module.TankCard,
);
const LeadCard = later(
  () => import('../fit/LeadCard'),
  (module) => module.LeadCard,
);
const StructureCard = later(
  () => import('./StructureCard'),
  (module) => module.StructureCard,
);

type Kind = 'part' | 'tank' | 'structure' | 'lead' | null;

const leadById = ({ leads }: Aircraft, id: string) => leads?.find((lead) => lead.id === id);

/** Anything aboard that has a card. */
const thingById = (aircraft: Aircraft, id: string) =>
  itemById(aircraft, id) ?? structureById(aircraft, id) ?? leadById(aircraft, id);

function kindOf(aircraft: Aircraft, id: string | null): Kind {
  if (id === null) return null;
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

/** The selected thing, or with nothing selected the aircraft itself. */
export function Card({ onClose }: { readonly onClose: () => void }) {
  const id = useView((view) => view.selectedId);
  const top = useRef<HTMLSpanElement>(null);
  // What is newly selected is read from its top.
  // biome-ignore lint/correctness/useExhaustiveDependencies: it is the selection that matters
  useLayoutEffect(() => {
    const scroller = top.current?.parentElement;
    if (scroller) scroller.scrollTop = 0;
  }, [id]);
  return (
    <>
      <span ref={top} hidden />
      <CardOf id={id} onClose={onClose} />
    </>
  );
}

function CardOf({ id, onClose }: { readonly id: string | null; readonly onClose: () => void }) {
  const kind = useCommitted((aircraft) => kindOf(aircraft, id));
  const name = useCommitted((aircraft) => (id === null ? '' : (thingById(aircraft, id)?.name ?? '')));
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
