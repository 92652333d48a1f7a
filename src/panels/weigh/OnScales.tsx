import type { Aircraft } from '../../model/document/types';
import { freshScale } from '../../model/weigh/freshReadings';
import { updateReading, updateScale } from '../../model/weigh/weighIns';
import { useCommitted } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { Measure } from '../fields/Measure';
import { useReadings } from '../readings';
import { Term } from '../Term';
import { PointField } from './PointField';
import { ScalesPicture } from './pictures/ScalesPicture';
import { RemoveButton } from './RemoveButton';
import { readingRows } from './readingField';
import { predictedOf, scalesOf } from './scalesOf';

/** Wheels on scales: the picture, then what was read. */
export function OnScales({ id }: { readonly id: string }) {
  const reading = useCommitted((aircraft) => scalesOf(aircraft, id));
  const loads = useCommitted((aircraft) => predictedOf(aircraft, id));
  const say = useReadings();
  const rows = readingRows(id, 'scales', 'scales');
  if (!reading) return null;
  const field = <K extends 'resolutionG' | 'tapeMm' | 'pitchDeg' | 'pitchPlusMinusDeg'>(key: K) => ({
    read: (aircraft: Aircraft) => scalesOf(aircraft, id)?.[key],
    write: (aircraft: Aircraft, value: number) => updateReading(aircraft, id, 'scales', { [key]: value }),
  });
  return (
    <>
      <ScalesPicture id={id} />
      <table className="weigh-scales">
        <caption className="unseen">Scales</caption>
        <thead>
          <tr>
            <th scope="col">Scale under</th>
            <th scope="col">Should read</th>
            <th scope="col">Reads</th>
            <th scope="col">Tare</th>
            <th scope="col">
              <Term of="station">Station</Term>
            </th>
            <th scope="col">
              <Term of="buttline">Buttline</Term>
            </th>
            {reading.pitchDeg !== 0 && <th scope="col">Waterline</th>}
            <td />
          </tr>
        </thead>
        <tbody>
          {reading.scales.map((scale, at) => (
            <tr key={at}>
              <th scope="row">{scale.name}</th>
              <td className="figure" data-head="Should read">
                {loads?.[at] === undefined ? '–' : say.mass(loads[at] + scale.tareG)}
              </td>
              <td data-head="Reads">
                <OfScale id={id} at={at} name={scale.name} of="grossG" />
              </td>
              <td data-head="Tare">
                <OfScale id={id} at={at} name={scale.name} of="tareG" />
              </td>
              {(reading.pitchDeg === 0 ? ([0, 1] as const) : ([0, 1, 2] as const)).map((axis) => (
                <td key={axis} data-head={heads[axis]}>
                  <PointField
                    of={scale.name}
                    axis={axis}
                    step={`Measure where ${scale.name} stands`}
                    read={(aircraft) => scalesOf(aircraft, id)?.scales[at]?.supportMm}
                    write={(aircraft, supportMm) => updateScale(aircraft, id, at, { supportMm })}
                  />
                </td>
              ))}
              <td className="weigh-take">
                {reading.scales.length > 2 && (
                  <RemoveButton
                    label={`Take the scale under ${scale.name} away`}
                    step="Take a scale away"
                    edit={(aircraft) => rows.remove(aircraft, at)}
                  />
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <EditButton
        className="link weigh-more"
        step="Add a scale"
        edit={(aircraft) => rows.add(aircraft, freshScale(reading.scales))}
      >
        Add a scale
      </EditButton>
      <div className="weigh-fields">
        <Measure
          label="Scales’ step"
          quantity="mass"
          step="Change the scales’ step"
          {...field('resolutionG')}
        />
        <Measure label="Tape, ±" quantity="length" step="Change the tape’s ±" {...field('tapeMm')} />
        <Measure
          label="Pitch, nose up"
          quantity="angle"
          step="Change the pitch of a weigh-in"
          {...field('pitchDeg')}
        />
        <Measure
          label="Pitch, ±"
          quantity="angle"
          step="Change the pitch’s ±"
          {...field('pitchPlusMinusDeg')}
        />
      </div>
    </>
  );
}

interface OfScaleProps {
  readonly id: string;
  readonly at: number;
  readonly name: string;
}

function OfScale({ id, at, name, of }: OfScaleProps & { readonly of: 'grossG' | 'tareG' }) {
  return (
    <Measure
      bare
      label={`${name}: ${of === 'grossG' ? 'reads' : 'tare'}`}
      quantity="mass"
      step={`Read the scale under ${name}`}
      read={(aircraft) => scalesOf(aircraft, id)?.scales[at]?.[of]}
      write={(aircraft, value) => updateScale(aircraft, id, at, { [of]: value })}
    />
  );
}

const heads = ['Station', 'Buttline', 'Waterline'] as const;
