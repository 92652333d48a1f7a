import type { Vec3 } from '../../engine/geometry/types';
import type { Aircraft } from '../../model/document/types';
import { Measure } from '../fields/Measure';
import { useReadings } from '../readings';
import { StationField } from './StationField';

interface Posed {
  readonly positionMm: Vec3;
  readonly yawDeg: number;
  readonly pitchDeg: number;
  readonly rollDeg: number;
}

interface PlaceFieldsProps {
  readonly name: string;
  /** Of a part or tank, whose station is measured to a face of it. */
  readonly itemId?: string;
  readonly read: (aircraft: Aircraft) => Posed | undefined;
  readonly write: (aircraft: Aircraft, change: Partial<Posed>) => Aircraft;
}

export const axisNames = ['Station', 'Buttline', 'Waterline'] as const;

const axisWords = ['station', 'buttline', 'waterline'] as const;

const angles = [
  { key: 'yawDeg', label: 'Yaw' },
  { key: 'pitchDeg', label: 'Pitch' },
  { key: 'rollDeg', label: 'Roll' },
] as const;

/** A point with one coordinate changed. */
export const withCoordinate = (point: Vec3, axis: number, value: number): Vec3 => [
  axis === 0 ? value : point[0],
  axis === 1 ? value : point[1],
  axis === 2 ? value : point[2],
];

/** Where it stands, and how it is turned. */
export function PlaceFields({ name, itemId, read, write }: PlaceFieldsProps) {
  const { fromMm } = useReadings();
  return (
    <>
      {itemId !== undefined && <StationField id={itemId} name={name} />}
      {axisNames.map((label, axis) =>
        axis === 0 && itemId !== undefined ? null : (
          <Measure
            key={label}
            label={label}
            term={axisWords[axis]}
            quantity="length"
            from={axis === 0 ? fromMm : 0}
            step={`Move ${name}`}
            read={(aircraft) => read(aircraft)?.positionMm[axis]}
            write={(aircraft, value) => {
              const now = read(aircraft);
              return now
                ? write(aircraft, { positionMm: withCoordinate(now.positionMm, axis, value) })
                : aircraft;
            }}
          />
        ),
      )}
      <details className="more">
        <summary>Turned</summary>
        {angles.map(({ key, label }) => (
          <Measure
            key={key}
            label={label}
            quantity="angle"
            step={`Turn ${name}`}
            read={(aircraft) => read(aircraft)?.[key]}
            write={(aircraft, value) => write(aircraft, { [key]: value })}
          />
        ))}
        <p className="hint">
          Yaw nose right +, pitch nose up +, roll right wing down +; applied in this order.
        </p>
      </details>
    </>
  );
}
