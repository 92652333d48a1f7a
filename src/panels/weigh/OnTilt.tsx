import type { Aircraft } from '../../model/document/types';
import { tiltedHeight, tiltedState, tiltToTake } from '../../model/weigh/byTilt';
import { predictedTilt } from '../../model/weigh/predicted';
import { changeReading, readingOf, weighInById } from '../../model/weigh/weighIns';
import { tiltWords } from '../../model/words/swingWords';
import { useCommitted } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { Measure } from '../fields/Measure';
import { useReadings } from '../readings';
import { PointField } from './PointField';
import { TiltPicture } from './pictures/TiltPicture';
import { RemoveButton } from './RemoveButton';
import { readingField, readingRows } from './readingField';
import { WholeMass } from './WholeMass';

/** One scale under the nose or tail wheel, read level and tilted. */
export function OnTilt({ id }: { readonly id: string }) {
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const entry = weighInById(aircraft, id);
  const reading = readingOf(aircraft, id, 'tilt');
  if (!entry || !reading) return null;
  const rows = readingRows(id, 'tilt', 'readings');
  const height = tiltedHeight(aircraft, entry, reading);
  const should = reading.readings.map(({ pitchDeg }) =>
    predictedTilt(reading.pivotMm, reading.otherMm, tiltedState(aircraft, entry, pitchDeg), pitchDeg),
  );
  const toTake = tiltToTake(aircraft, entry, reading);
  return (
    <>
      <TiltPicture id={id} />
      <p className="hint">
        Chock the main wheels so that they can still roll on their axles, put the scale under the other wheel,
        and raise that wheel or the mains. Lock sprung legs. {tiltWords(toTake, say)}
      </p>
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
      <EditButton
        className="link weigh-more"
        step="Add a tilt"
        edit={(now) => rows.add(now, { pitchDeg: toTake?.pitchDeg ?? 10, grossG: 0 })}
      >
        Add a tilt
      </EditButton>
      {height.ok && (
        <p className="hint">
          {`At the steepest tilt one gram on the scale makes ${say.lengthFine(height.mmPerG)} of height, so read it well and tilt it far.`}
        </p>
      )}
      <div className="weigh-fields">
        <WholeMass id={id} by="tilt" needed />
        <Measure label="Tare" quantity="mass" step="Change the tare" {...readingField(id, 'tilt', 'tareG')} />
        <Measure
          label="Scale’s step"
          quantity="mass"
          step="Change the scale’s step"
          {...readingField(id, 'tilt', 'resolutionG')}
        />
        <Measure
          label="Pitch, ±"
          quantity="angle"
          step="Change the pitch’s ±"
          {...readingField(id, 'tilt', 'pitchPlusMinusDeg')}
        />
        <Measure
          label="Tape, ±"
          quantity="length"
          step="Change the tape’s ±"
          {...readingField(id, 'tilt', 'tapeMm')}
        />
      </div>
      <table className="weigh-scales weigh-axles">
        <caption className="unseen">Axles</caption>
        <thead>
          <tr>
            <th scope="col">Axle</th>
            <th scope="col">Station</th>
            <th scope="col">Waterline</th>
          </tr>
        </thead>
        <tbody>
          {axles.map(({ key, label }) => (
            <tr key={key}>
              <th scope="row">{label}</th>
              {([0, 2] as const).map((axis) => (
                <td key={axis} data-head={axis === 0 ? 'Station' : 'Waterline'}>
                  <PointField
                    of={label}
                    axis={axis}
                    step="Measure an axle"
                    read={(now: Aircraft) => readingOf(now, id, 'tilt')?.[key]}
                    write={(now, pointMm) => changeReading(now, id, 'tilt', () => ({ [key]: pointMm }))}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

const axles = [
  { key: 'pivotMm', label: 'It turns about' },
  { key: 'otherMm', label: 'Over the scale' },
] as const;
