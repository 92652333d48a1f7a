import { useState } from 'react';
import type { BareAirframe } from '../../model/document/types';
import type { Quantity, UnitSystem } from '../../model/units';
import { useView } from '../../store/react';
import { Refusal } from '../fields/EditButton';
import { readEntry } from '../fields/entryText';
import { TypedLine } from '../fields/TypedLine';
import { useEdit } from '../fields/useEdit';
import { useReadings } from '../readings';

const figureOf = (text: string, quantity: Quantity, units: UnitSystem, what: string) => {
  const entry = readEntry(text, quantity, units, false);
  if (!entry.ok) return { fault: `${what}: ${entry.sentence}`, value: 0 };
  return { fault: null, value: entry.value ?? 0 };
};

/** What the scales said, typed by the person from nothing: no computed figure stands there to be taken for a weighed one. */
export function WeighedStart() {
  const units = useView((view) => view.units);
  const { fromMm } = useReadings();
  const edit = useEdit();
  const [typed, setTyped] = useState({ mass: '', station: '' });
  const [fault, setFault] = useState<string | null>(null);
  const take = () => {
    const mass = figureOf(typed.mass, 'mass', units, 'Mass');
    const station = figureOf(typed.station, 'length', units, 'Station');
    const wrong = mass.fault ?? station.fault;
    if (wrong !== null) return setFault(wrong);
    const bareAirframe: BareAirframe = {
      massG: mass.value,
      stationMm: station.value + fromMm,
      buttlineMm: 0,
      use: 'correct',
    };
    setFault(edit('Enter the weighed airframe', (aircraft) => ({ ...aircraft, bareAirframe })));
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        take();
      }}
    >
      <TypedLine
        label="Weighed mass"
        value={typed.mass}
        onChange={({ target }) => setTyped({ ...typed, mass: target.value })}
      />
      <TypedLine
        label="CG station"
        value={typed.station}
        onChange={({ target }) => setTyped({ ...typed, station: target.value })}
      />
      <button type="submit" className="button">
        Take what the scales say
      </button>
      <Refusal fault={fault} />
      <p className="hint">From then on it corrects the shapes.</p>
    </form>
  );
}
