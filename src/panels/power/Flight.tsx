import type { Aircraft, PowerFlight } from '../../model/document/types';
import { powerPlan } from '../../model/power/draws';
import { useCommitted } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { Measure } from '../fields/Measure';
import { RowsTable } from '../fields/RowsTable';

const aFlight: PowerFlight = {
  phases: [
    { name: 'Take-off and climb', durationS: 60, throttlePct: 100 },
    { name: 'Flight', durationS: 480, throttlePct: 45 },
    { name: 'Landing', durationS: 60, throttlePct: 20 },
  ],
  reservePct: 25,
};

const withFlight = (aircraft: Aircraft, change: Partial<PowerFlight>): Aircraft => ({
  ...aircraft,
  powerFlight: { ...(aircraft.powerFlight ?? aFlight), ...change },
});

/** The flight that packs are held to: the fuel profile where there is one, else one that is stated here. */
export function Flight() {
  const from = useCommitted((aircraft) => powerPlan(aircraft)?.from ?? null);
  if (from === 'fuel profile') return null;
  if (from === null) {
    return (
      <p className="power-noflight">
        How long does it fly?{' '}
        <EditButton step="State the flight" edit={(aircraft) => withFlight(aircraft, aFlight)}>
          State the flight
        </EditButton>
      </p>
    );
  }
  return (
    <details className="power-flight">
      <summary>The flight that packs are held to</summary>
      <RowsTable
        title="The flight that packs are held to"
        noun="phase"
        columns={[
          { key: 'name', label: 'Phase', quantity: 'text' },
          { key: 'durationS', label: 'Lasts', quantity: 'time' },
          { key: 'throttlePct', label: 'Throttle', quantity: 'ratio' },
        ]}
        read={(aircraft) => aircraft.powerFlight?.phases ?? []}
        write={(aircraft, phases) => withFlight(aircraft, { phases: [...phases] })}
        another={() => ({ name: 'Flight', durationS: 300, throttlePct: 45 })}
        least={1}
      />
      <Measure
        label="Reserve"
        term="reserve"
        quantity="ratio"
        step="Change the reserve"
        read={(aircraft) => aircraft.powerFlight?.reservePct}
        write={(aircraft, reservePct) => withFlight(aircraft, { reservePct })}
      />
    </details>
  );
}
