import type { Aircraft, WeighIn } from '../../model/document/types';
import { updateReading, weighInById } from '../../model/weigh/weighIns';
import { useCommitted } from '../../store/react';
import { Measure } from '../fields/Measure';
import { useReadings } from '../readings';

type StandReading = Extract<WeighIn['reading'], { readonly by: 'stand' }>;

const standOf = (aircraft: Aircraft, id: string): StandReading | null => {
  const reading = weighInById(aircraft, id)?.reading;
  return reading?.by === 'stand' ? reading : null;
};

/** Two supports left and right, and grams at nose or tail that bring it level. */
export function OnStand({ id }: { readonly id: string }) {
  const say = useReadings();
  const addedG = useCommitted((aircraft) => standOf(aircraft, id)?.addedG ?? 0);
  const write = (change: Partial<StandReading>) => (aircraft: Aircraft) =>
    updateReading(aircraft, id, 'stand', change);
  return (
    <>
      <h3>Found by hand</h3>
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
          read={(aircraft) => standOf(aircraft, id)?.supportMm}
          write={(aircraft, supportMm) => write({ supportMm })(aircraft)}
        />
        <Measure
          label="Found to, ±"
          quantity="length"
          step="Change how well the balance was found"
          read={(aircraft) => standOf(aircraft, id)?.plusMinusMm}
          write={(aircraft, plusMinusMm) => write({ plusMinusMm })(aircraft)}
        />
        <Measure
          label="Grams added"
          quantity="mass"
          step="Change the grams added"
          read={(aircraft) => standOf(aircraft, id)?.addedG}
          write={(aircraft, grams) => write({ addedG: grams })(aircraft)}
        />
        {addedG > 0 && (
          <Measure
            label="Added at"
            quantity="length"
            from={say.fromMm}
            step="Measure where the grams lay"
            read={(aircraft) => standOf(aircraft, id)?.addedAtMm}
            write={(aircraft, addedAtMm) => write({ addedAtMm })(aircraft)}
          />
        )}
        <Measure
          label="Whole, weighed"
          quantity="mass"
          step="Weigh the whole"
          empty={{ means: 'not weighed', write: write({ massG: null }) }}
          read={(aircraft) => standOf(aircraft, id)?.massG ?? null}
          write={(aircraft, massG) => write({ massG })(aircraft)}
        />
        <Measure
          label="Whole, ±"
          quantity="mass"
          step="Change how well the whole was weighed"
          read={(aircraft) => standOf(aircraft, id)?.massPlusMinusG}
          write={(aircraft, massPlusMinusG) => write({ massPlusMinusG })(aircraft)}
        />
      </div>
    </>
  );
}
