import type { tiltedHeight } from '../../model/weigh/byTilt';
import { readingOf } from '../../model/weigh/weighIns';
import { useCommitted } from '../../store/react';
import { Measure } from '../fields/Measure';
import { useReadings } from '../readings';
import { RemoveButton } from './RemoveButton';
import { readingRows } from './readingField';

interface TiltRowsProps {
  readonly id: string;
  /** What the scale should read at each tilt by the list, tare apart, g; null where it would read nothing. */
  readonly should: readonly (number | null)[];
  readonly height: ReturnType<typeof tiltedHeight>;
}

/** Each tilt: its pitch, what the scale should read and reads, and how far it is off the fit through all of them. */
export function TiltRows({ id, should, height }: TiltRowsProps) {
  const say = useReadings();
  const reading = useCommitted((aircraft) => readingOf(aircraft, id, 'tilt'));
  if (!reading) return null;
  const rows = readingRows(id, 'tilt', 'readings');
  return (
    <table className="weigh-scales">
      <caption className="unseen">Tilts</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">Pitch, nose up</th>
          <th scope="col">Should read</th>
          <th scope="col">Reads</th>
          <th scope="col">Off the fit</th>
          <td />
        </tr>
      </thead>
      <tbody>
        {reading.readings.map((_, at) => (
          <tr key={at}>
            <th scope="row">{`Tilt ${at + 1}`}</th>
            <td data-head="Pitch, nose up">
              <Measure
                bare
                label={`Tilt ${at + 1}: pitch`}
                quantity="angle"
                step="Change the pitch of a tilt"
                read={(now) => rows.rows(now)[at]?.pitchDeg}
                write={(now, pitchDeg) => rows.change(now, at, { pitchDeg })}
              />
            </td>
            <td className="figure" data-head="Should read">
              {should[at] == null ? '–' : say.mass(should[at] + reading.tareG)}
            </td>
            <td data-head="Reads">
              <Measure
                bare
                label={`Tilt ${at + 1}: reads`}
                quantity="mass"
                step="Read the scale at a tilt"
                read={(now) => rows.rows(now)[at]?.grossG}
                write={(now, grossG) => rows.change(now, at, { grossG })}
              />
            </td>
            <td className="figure" data-head="Off the fit">
              {height.ok && reading.readings.length > 2 ? say.mass(Math.round(height.leftG[at] ?? 0)) : '–'}
            </td>
            <td className="weigh-take">
              {reading.readings.length > 2 && (
                <RemoveButton
                  label={`Remove tilt ${at + 1}`}
                  step="Remove a tilt"
                  edit={(now) => rows.remove(now, at)}
                />
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
