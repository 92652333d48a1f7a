import { normalise } from '../../engine/geometry/vec3';
import { SWINGS, swingOf } from '../../model/airframe/retract';
import type { Aircraft, Leg } from '../../model/document/types';
import { useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';
import { Measure } from '../fields/Measure';

interface RetractFieldsProps {
  readonly name: string;
  readonly read: (aircraft: Aircraft) => Leg | undefined;
  readonly write: (aircraft: Aircraft, change: Partial<Leg>) => Aircraft;
}

const ways = [
  { value: 'fixed', label: 'Stays down' },
  { value: 'forward', label: 'Swings forward' },
  { value: 'aft', label: 'Swings aft' },
  { value: 'inward', label: 'Swings inward' },
  { value: 'outward', label: 'Swings outward' },
];
const askew = { value: 'askew', label: 'About a hinge set askew' };

/** How a leg retracts about its top. */
export function RetractFields({ name, read, write }: RetractFieldsProps) {
  const swing = useCommitted((aircraft) => {
    const leg = read(aircraft);
    return leg ? swingOf(leg) : 'fixed';
  });
  return (
    <>
      <Choice
        label="Retracts"
        step={`Change how ${name} retracts`}
        options={swing === 'askew' ? [...ways, askew] : ways}
        read={(aircraft) => {
          const leg = read(aircraft);
          return leg ? swingOf(leg) : 'fixed';
        }}
        write={(aircraft, way) => {
          const axis = SWINGS.find((swing) => swing.way === way)?.axis;
          const angleDeg = read(aircraft)?.retract?.angleDeg ?? 90;
          return write(aircraft, { retract: axis && { axis, angleDeg } });
        }}
      />
      {swing !== 'fixed' && (
        <Measure
          label="Swings by"
          quantity="angle"
          step={`Change how far ${name} swings`}
          read={(aircraft) => read(aircraft)?.retract?.angleDeg}
          write={(aircraft, angleDeg) => {
            const axis = normalise(read(aircraft)?.retract?.axis ?? [0, 1, 0]);
            return axis ? write(aircraft, { retract: { axis, angleDeg } }) : aircraft;
          }}
        />
      )}
    </>
  );
}
