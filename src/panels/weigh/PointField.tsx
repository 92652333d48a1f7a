import type { Vec3 } from '../../engine/geometry/types';
import type { Aircraft } from '../../model/document/types';
import { Measure } from '../fields/Measure';
import { useReadings } from '../readings';

const names = ['station', 'buttline', 'waterline'] as const;

interface PointFieldProps {
  readonly of: string;
  readonly axis: 0 | 1 | 2;
  readonly step: string;
  readonly read: (aircraft: Aircraft) => Vec3 | undefined;
  readonly write: (aircraft: Aircraft, pointMm: Vec3) => Aircraft;
}

/** One coordinate of a measured point, named for screen readers only; stations from the reference point of the readings. */
export function PointField({ of, axis, step, read, write }: PointFieldProps) {
  const say = useReadings();
  return (
    <Measure
      bare
      label={`${of}: ${names[axis]}`}
      quantity="length"
      from={axis === 0 ? say.fromMm : 0}
      step={step}
      read={(aircraft) => read(aircraft)?.[axis]}
      write={(aircraft, value) => {
        const was = read(aircraft);
        return was
          ? write(aircraft, was.map((part, at) => (at === axis ? value : part)) as unknown as Vec3)
          : aircraft;
      }}
    />
  );
}
