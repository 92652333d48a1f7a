import { useLayoutEffect, useRef } from 'react';
import './card.css';
import { itemById, structureById } from '../../model/document/edit';
import type { Aircraft } from '../../model/document/types';
import { useCommitted, useMeshInHand, useView } from '../../store/react';
import { later } from '../later';

const AircraftCard = later(
  () => import('./AircraftCard'),
  (module) => module.AircraftCard,
  { meanwhile: <div className="card" />, place: 'The aircraft’s card' },
);
const ThingCard = later(
  () => import('./ThingCard'),
  (module) => module.ThingCard,
  { meanwhile: <div className="card" />, place: 'The card' },
);

const GroupCard = later(
  () => import('./GroupCard'),
  (module) => module.GroupCard,
  { meanwhile: <div className="card" />, place: 'The card' },
);

const MeshCard = later(
  () => import('../mesh/MeshCard'),
  (module) => module.MeshCard,
  { meanwhile: <div className="card" />, place: 'The mesh' },
);

const isAboard = (aircraft: Aircraft, id: string) =>
  (itemById(aircraft, id) ??
    structureById(aircraft, id) ??
    aircraft.leads?.find((lead) => lead.id === id)) !== undefined;

/** The selected thing, or with nothing selected the aircraft itself. */
export function Card({ onClose }: { readonly onClose: () => void }) {
  const id = useView((view) => view.selectedId);
  const aboard = useCommitted((aircraft) => id !== null && isAboard(aircraft, id));
  const several = useView(({ groupIds }) => groupIds.length > 1);
  const mesh = useMeshInHand() !== null;
  const top = useRef<HTMLSpanElement>(null);
  // What is newly selected is read from its top.
  useLayoutEffect(() => {
    const scroller = top.current?.parentElement;
    if (scroller) scroller.scrollTop = 0;
  }, [id, mesh]);
  return (
    <>
      <span ref={top} hidden />
      {mesh ? (
        <MeshCard />
      ) : (
        <Shown id={id !== null && aboard ? id : null} several={several} onClose={onClose} />
      )}
    </>
  );
}

interface ShownProps {
  readonly id: string | null;
  readonly several: boolean;
  readonly onClose: () => void;
}

function Shown({ id, several, onClose }: ShownProps) {
  if (id === null) return <AircraftCard />;
  return several ? <GroupCard onClose={onClose} /> : <ThingCard id={id} onClose={onClose} />;
}
