import { type RefObject, useLayoutEffect } from 'react';
import { itemById } from '../../model/document/edit';
import { shownText } from '../../model/document/names';
import { formatMass, formatVolume } from '../../model/units';
import { useAircraft, useBalance, useFitOf, useView } from '../../store/react';

/** The pills over the stage by item; the scene puts them in place. */
export type LabelElements = Map<string, HTMLElement>;

interface LabelsProps {
  readonly elements: RefObject<LabelElements>;
}

const idsOf = (list: string) => list.split(' ').filter(Boolean);

/** A pill for each thing aboard: its name and mass, and what it runs into. */
export function Labels({ elements }: LabelsProps) {
  const ids = useAircraft(({ parts, tanks }) => [...parts, ...tanks].map(({ id }) => id).join(' '));
  return (
    <div className="stage-labels" aria-hidden="true">
      {idsOf(ids).map((id) => (
        <Label key={id} id={id} elements={elements} />
      ))}
    </div>
  );
}

function Label({ id, elements }: LabelsProps & { readonly id: string }) {
  const units = useView((state) => state.units);
  const selected = useView((state) => state.selectedId === id);
  const name = useAircraft((aircraft) => itemById(aircraft, id)?.name ?? '');
  const massG = useAircraft(({ parts }) => parts.find((part) => part.id === id)?.massG ?? null);
  const liquidMl = useBalance(({ liquids }) => {
    const held = liquids.find(({ tankId }) => tankId === id);
    return held ? Math.round(held.volumeMl) : 0;
  });
  const clash = useFitOf((fit) => (selected ? fit.clashName(id) : ''));
  const figure = massG === null ? formatVolume(liquidMl, units) : formatMass(massG, units);
  const text = clash
    ? `${shownText(name)} · in the way of ${shownText(clash)}`
    : `${shownText(name)} · ${figure}`;

  useLayoutEffect(() => {
    const element = elements.current.get(id);
    if (element) element.dataset.width = '';
  });
  return (
    <span
      className="stage-label"
      data-selected={selected}
      data-clash={clash !== ''}
      ref={(element) => {
        if (element) elements.current.set(id, element);
        else elements.current.delete(id);
      }}
    >
      {text}
    </span>
  );
}
