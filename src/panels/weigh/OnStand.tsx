import { freshAcross } from '../../model/weigh/freshReadings';
import { changeReading, readingOf } from '../../model/weigh/weighIns';
import { useCommitted } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { Measure } from '../fields/Measure';
import { useReadings } from '../readings';
import { StandPicture } from './pictures/StandPicture';
import { readingField } from './readingField';
import { WholeMass } from './WholeMass';

/** Two supports left and right, and grams at nose or tail that bring it level; hung by nose and tail, grams on one side. */
export function OnStand({ id }: { readonly id: string }) {
  const say = useReadings();
  const addedG = useCommitted((aircraft) => readingOf(aircraft, id, 'stand')?.addedG ?? 0);
  const across = useCommitted((aircraft) => readingOf(aircraft, id, 'stand')?.across !== undefined);
  return (
    <>
      <StandPicture id={id} />
      <h3>Along</h3>
      <p className="hint">
        Set two supports left and right at one station, or use two fingertips, and move them until the
        aircraft rests level. Where they cannot stand, leave them and lay grams on nose or tail until it does.
      </p>
      <div className="weigh-fields">
        <Measure
          label="Supports at"
          quantity="length"
          from={say.fromMm}
          step="Measure the supports"
          empty={{
            means: 'not measured',
            write: (aircraft) => readingField(id, 'stand', 'supportMm').write(aircraft, null),
          }}
          {...readingField(id, 'stand', 'supportMm')}
        />
        <Measure
          label="Found to, ±"
          quantity="length"
          step="Change how well the balance was found"
          {...readingField(id, 'stand', 'plusMinusMm')}
        />
        <Measure
          label="Grams added"
          quantity="mass"
          step="Change the grams added"
          {...readingField(id, 'stand', 'addedG')}
        />
        {addedG > 0 && (
          <Measure
            label="Added at"
            quantity="length"
            from={say.fromMm}
            step="Measure where the grams lay"
            {...readingField(id, 'stand', 'addedAtMm')}
          />
        )}
        <WholeMass id={id} by="stand" />
      </div>
      <h3>Across</h3>
      <p className="hint">
        Hang it by spinner and tail, or on two threads round nose and tail, so that it can roll. The heavy
        wing drops: lay grams on the other one until it stays level.
      </p>
      {across ? <Across id={id} /> : <LookAcross id={id} />}
    </>
  );
}

const LookAcross = ({ id }: { readonly id: string }) => (
  <EditButton
    className="link weigh-more"
    step="Hang it by nose and tail"
    edit={(aircraft) => changeReading(aircraft, id, 'stand', () => ({ across: freshAcross }))}
  >
    It was hung up
  </EditButton>
);

function Across({ id }: { readonly id: string }) {
  const field = (key: keyof typeof freshAcross) => ({
    read: (aircraft: Parameters<typeof readingOf>[0]) => readingOf(aircraft, id, 'stand')?.across?.[key],
    write: (aircraft: Parameters<typeof readingOf>[0], value: number) =>
      changeReading(aircraft, id, 'stand', ({ across = freshAcross }) => ({
        across: { ...across, [key]: value },
      })),
  });
  return (
    <>
      <div className="weigh-fields">
        <Measure
          label="Grams on it"
          quantity="mass"
          step="Change the grams on one side"
          {...field('addedG')}
        />
        <Measure
          label="At buttline"
          quantity="length"
          step="Measure where the grams lay across"
          {...field('addedAtMm')}
        />
        <Measure
          label="Grams, ±"
          quantity="mass"
          step="Change how many grams make no difference"
          {...field('plusMinusG')}
        />
      </div>
      <EditButton
        className="link weigh-more"
        step="Leave out how it hung"
        edit={(aircraft) => changeReading(aircraft, id, 'stand', () => ({ across: undefined }))}
      >
        It was not hung up
      </EditButton>
    </>
  );
}
