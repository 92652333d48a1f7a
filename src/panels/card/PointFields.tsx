import type { Vec3 } from '../../engine/geometry/types';
import type { Aircraft } from '../../model/document/types';
import { Measure } from '../fields/Measure';
import { useReadings } from '../readings';
import { axisNames, withCoordinate } from './PlaceFields';

interface PointFieldsProps {
  readonly title: string;
  readonly step: string;
  readonly read: (aircraft: Aircraft) => Vec3 | undefined;
  readonly write: (aircraft: Aircraft, point: Vec3) => Aircraft;
}

/** A point of the airframe by its three coordinates. */
export function PointFields({ title, step, read, write }: PointFieldsProps) {
  const { fromMm } = useReadings();
  return (
    <fieldset className="point">
      <legend>{title}</legend>
      {axisNames.map((label, axis) => (
        <Measure
          key={label}
          label={label}
          quantity="length"
          from={axis === 0 ? fromMm : 0}
          step={step}
          read={(aircraft) => read(aircraft)?.[axis]}
          write={(aircraft, value) => {
            const point = read(aircraft);
            return point ? write(aircraft, withCoordinate(point, axis, value)) : aircraft;
          }}
        />
      ))}
    </fieldset>
  );
}
