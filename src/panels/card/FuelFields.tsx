import type { Aircraft, Fuel } from '../../model/document/types';
import { useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { TextEntry } from '../fields/TextEntry';
import { FuelMore } from './FuelMore';

const kinds: readonly { readonly value: Fuel['kind']; readonly label: string }[] = [
  { value: 'petrol', label: 'Petrol' },
  { value: 'methanol', label: 'Methanol' },
  { value: 'kerosene', label: 'Kerosene' },
  { value: 'water', label: 'Water' },
  { value: 'other', label: 'Other' },
];

/** What the tanks hold and how it leaves them. The profile is edited in the burn. */
export function FuelFields() {
  const has = useCommitted(({ fuel }) => fuel !== null);
  const change = (aircraft: Aircraft, fields: Partial<Fuel>): Aircraft => ({
    ...aircraft,
    fuel: aircraft.fuel && { ...aircraft.fuel, ...fields },
  });
  const flow = (aircraft: Aircraft, fields: Partial<Fuel['flow']>): Aircraft =>
    aircraft.fuel ? change(aircraft, { flow: { ...aircraft.fuel.flow, ...fields } }) : aircraft;
  if (!has) return <p className="hint">Nothing burns. Add a tank and it will.</p>;
  return (
    <>
      <TextEntry
        label="Name"
        step="Rename the fuel"
        read={({ fuel }) => fuel?.name}
        write={(aircraft, name) => change(aircraft, { name })}
      />
      <Choice
        label="Kind"
        step="Change the fuel"
        options={kinds}
        read={({ fuel }) => fuel?.kind ?? 'other'}
        write={(aircraft, kind) => change(aircraft, { kind: kind as Fuel['kind'] })}
      />
      <Measure
        label="Density"
        quantity="number"
        suffix="g/ml"
        step="Change the density of the fuel"
        read={({ fuel }) => fuel?.densityGPerMl}
        write={(aircraft, densityGPerMl) => change(aircraft, { densityGPerMl })}
      />
      <Choice
        label="Leaves by"
        step="Change how the fuel leaves"
        options={[
          { value: 'burn', label: 'Burning' },
          { value: 'dump', label: 'Dumping' },
        ]}
        read={({ fuel }) => fuel?.use ?? 'burn'}
        write={(aircraft, use) => change(aircraft, { use: use as Fuel['use'] })}
      />
      <Choice
        label="Equal ranks"
        step="Change how tanks share"
        options={[
          { value: 'volume', label: 'In proportion' },
          { value: 'level', label: 'Surfaces level' },
        ]}
        read={({ fuel }) => fuel?.share ?? 'volume'}
        write={(aircraft, share) => change(aircraft, { share: share as Fuel['share'] })}
      />
      <Measure
        label="Flow, idle"
        quantity="volume"
        suffix="/min"
        step="Change the flow at idle"
        read={({ fuel }) => fuel?.flow.idleMlPerMin}
        write={(aircraft, idleMlPerMin) => flow(aircraft, { idleMlPerMin })}
      />
      <Measure
        label="Flow, full"
        quantity="volume"
        suffix="/min"
        step="Change the flow at full throttle"
        read={({ fuel }) => fuel?.flow.fullMlPerMin}
        write={(aircraft, fullMlPerMin) => flow(aircraft, { fullMlPerMin })}
      />
      <Measure
        label="Reserve"
        quantity="ratio"
        step="Change the reserve"
        read={({ fuel }) => fuel?.reservePct}
        write={(aircraft, reservePct) => change(aircraft, { reservePct })}
      />
      <FuelMore />
    </>
  );
}
