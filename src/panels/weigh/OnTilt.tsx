import { tiltedHeight, tiltedState, tiltToTake } from '../../model/weigh/byTilt';
import { predictedTilt } from '../../model/weigh/predicted';
import { readingOf, weighInById } from '../../model/weigh/weighIns';
import { tiltWords } from '../../model/words/swingWords';
import { useCommitted } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { Measure } from '../fields/Measure';
import { useReadings } from '../readings';
import { AxleRows } from './AxleRows';
import { TiltPicture } from './pictures/TiltPicture';
import { readingField, readingRows } from './readingField';
import { TiltRows } from './TiltRows';
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
      <TiltRows id={id} should={should} height={height} />
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
      <AxleRows id={id} />
    </>
  );
}
