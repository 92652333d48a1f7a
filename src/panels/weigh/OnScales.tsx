import type { Aircraft, ScaleReading } from '../../model/document/types';
import { updateReading, updateScale } from '../../model/weigh/weighIns';
import { useCommitted } from '../../store/react';
import { Measure } from '../fields/Measure';
import { useReadings } from '../readings';
import { ScalesPicture } from './ScalesPicture';
import { predictedOf, scalesOf } from './scalesOf';

/** Wheels on scales: the picture, then what was read. */
export function OnScales({ id }: { readonly id: string }) {
  const reading = useCommitted((aircraft) => scalesOf(aircraft, id));
  const loads = useCommitted((aircraft) => predictedOf(aircraft, id));
  const say = useReadings();
  if (!reading) return null;
  const field = <K extends 'resolutionG' | 'tapeMm' | 'pitchDeg' | 'pitchPlusMinusDeg'>(key: K) => ({
    read: (aircraft: Aircraft) => scalesOf(aircraft, id)?.[key],
    write: (aircraft: Aircraft, value: number) => updateReading(aircraft, id, 'scales', { [key]: value }),
  });
  return (
    <>
      <ScalesPicture id={id} />
      <div className="rows-scroll">
        <table className="weigh-scales">
          <caption className="unseen">Scales</caption>
          <thead>
            <tr>
              <th scope="col">Scale under</th>
              <th scope="col">Should read</th>
              <th scope="col">Reads</th>
              <th scope="col">Tare</th>
              <th scope="col">Station</th>
              <th scope="col">Buttline</th>
              {reading.pitchDeg !== 0 && <th scope="col">Waterline</th>}
            </tr>
          </thead>
          <tbody>
            {reading.scales.map((scale, at) => (
              <tr key={at}>
                <th scope="row">{scale.name}</th>
                <td className="figure">
                  {loads?.[at] === undefined ? '–' : say.mass(loads[at] + scale.tareG)}
                </td>
                <td>
                  <OfScale id={id} at={at} name={scale.name} of="grossG" />
                </td>
                <td>
                  <OfScale id={id} at={at} name={scale.name} of="tareG" />
                </td>
                <td>
                  <OfSupport id={id} at={at} name={scale.name} axis={0} />
                </td>
                <td>
                  <OfSupport id={id} at={at} name={scale.name} axis={1} />
                </td>
                {reading.pitchDeg !== 0 && (
                  <td>
                    <OfSupport id={id} at={at} name={scale.name} axis={2} />
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
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

function OfSupport({ id, at, name, axis }: OfScaleProps & { readonly axis: 0 | 1 | 2 }) {
  const say = useReadings();
  const words = ['station', 'buttline', 'waterline'][axis];
  const read = (aircraft: Aircraft) => scalesOf(aircraft, id)?.scales[at]?.supportMm;
  return (
    <Measure
      bare
      label={`${name}: ${words}`}
      quantity="length"
      from={axis === 0 ? say.fromMm : 0}
      step={`Measure where ${name} stands`}
      read={(aircraft) => read(aircraft)?.[axis]}
      write={(aircraft, value) => {
        const supportMm = read(aircraft)?.map((was, index) => (index === axis ? value : was));
        return supportMm
          ? updateScale(aircraft, id, at, { supportMm: supportMm as unknown as ScaleReading['supportMm'] })
          : aircraft;
      }}
    />
  );
}
