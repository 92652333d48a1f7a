import { changeReading, readingOf, weighInById } from '../../model/weigh/weighIns';
import { axisOfSwing, hangingHint } from '../../model/words/swingWords';
import { useCommitted } from '../../store/react';
import { Choice, Tick } from '../fields/Choice';
import { EditButton } from '../fields/EditButton';
import { Measure } from '../fields/Measure';
import { SwingPicture } from './pictures/SwingPicture';
import { Runs } from './Runs';
import { readingField } from './readingField';
import { WholeMass } from './WholeMass';

const hows = [
  { value: 'bifilar', label: 'on two threads' },
  { value: 'trifilar', label: 'on a plate with three' },
  { value: 'compound', label: 'as a pendulum' },
] as const;

const axes = (['roll', 'pitch', 'yaw'] as const).map((value) => ({ value, label: axisOfSwing(value) }));

const apartLabels = {
  bifilar: 'Threads apart',
  trifilar: 'Thread to middle',
  compound: 'Axis to CG',
} as const;

/** Hung up and swung: how it hangs, and the time it takes. */
export function OnSwing({ id }: { readonly id: string }) {
  const reading = useCommitted((aircraft) => readingOf(aircraft, id, 'swing'));
  const burns = useCommitted(
    (aircraft) => aircraft.tanks.length > 0 && (weighInById(aircraft, id)?.fuelPct ?? 0) > 0,
  );
  if (!reading) return null;
  const { how, axis, plate } = reading;
  return (
    <>
      <SwingPicture id={id} />
      <p className="hint">
        {hangingHint(how, axis)}
        {burns && ' Drain it: fuel that sloshes swings to a time of its own.'}
      </p>
      <div className="weigh-fields">
        <Choice
          label="Inertia in"
          options={axes}
          step="Change the axis of a swing"
          read={(aircraft) => readingOf(aircraft, id, 'swing')?.axis ?? 'yaw'}
          write={(aircraft, value) =>
            changeReading(aircraft, id, 'swing', () => ({
              axis: axes.find((each) => each.value === value)?.value ?? axis,
            }))
          }
        />
        <Choice
          label="Hung"
          options={hows}
          step="Change how it was hung"
          read={(aircraft) => readingOf(aircraft, id, 'swing')?.how ?? 'bifilar'}
          write={(aircraft, value) =>
            changeReading(aircraft, id, 'swing', () => ({
              how: hows.find((each) => each.value === value)?.value ?? how,
            }))
          }
        />
      </div>
      <Runs id={id} />
      <div className="weigh-fields">
        <Measure
          label={apartLabels[how]}
          quantity="length"
          step="Measure how it hung"
          {...readingField(id, 'swing', 'apartMm')}
        />
        {how !== 'compound' && (
          <Measure
            label="Threads long"
            quantity="length"
            step="Measure the threads"
            {...readingField(id, 'swing', 'threadMm')}
          />
        )}
        <Measure
          label="Tape, ±"
          quantity="length"
          step="Change the tape’s ±"
          {...readingField(id, 'swing', 'tapeMm')}
        />
        <Measure
          label="To each side"
          quantity="angle"
          step="Change how far it swung"
          {...readingField(id, 'swing', 'amplitudeDeg')}
        />
        <Measure
          label="A run, ±"
          quantity="number"
          suffix="s"
          step="Change how well a run is timed"
          {...readingField(id, 'swing', 'thumbS')}
        />
        <WholeMass id={id} by="swing" needed />
        {how === 'trifilar' && plate && (
          <>
            <Measure
              label="Plate"
              quantity="mass"
              step="Weigh the plate"
              read={(aircraft) => readingOf(aircraft, id, 'swing')?.plate?.massG}
              write={(aircraft, massG) =>
                changeReading(aircraft, id, 'swing', () => ({ plate: { ...plate, massG } }))
              }
            />
            <Measure
              label="Plate alone"
              quantity="number"
              suffix="s"
              step="Time the plate"
              read={(aircraft) => readingOf(aircraft, id, 'swing')?.plate?.periodS}
              write={(aircraft, periodS) =>
                changeReading(aircraft, id, 'swing', () => ({ plate: { ...plate, periodS } }))
              }
            />
          </>
        )}
      </div>
      {how === 'trifilar' && (
        <EditButton
          className="link weigh-more"
          step={plate ? 'Leave the plate out' : 'Take the plate off'}
          edit={(aircraft) =>
            changeReading(aircraft, id, 'swing', () => ({
              plate: plate ? undefined : { massG: 0, periodS: 0 },
            }))
          }
        >
          {plate ? 'It hangs without a plate' : 'Take a plate’s own inertia off'}
        </EditButton>
      )}
      <Tick
        label="Take off the air that swings along (an estimate)"
        step="Take off the air that swings along"
        read={(aircraft) => readingOf(aircraft, id, 'swing')?.lessAir === true}
        write={(aircraft, lessAir) => changeReading(aircraft, id, 'swing', () => ({ lessAir }))}
      />
    </>
  );
}
