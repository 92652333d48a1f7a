import { useState } from 'react';
import type { WeighIn } from '../../model/document/types';
import { removeWeighIn, updateWeighIn, weighInById } from '../../model/weigh/weighIns';
import { dayWords } from '../../model/words/weighWords';
import { useCommitted } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { Measure } from '../fields/Measure';
import { TextEntry } from '../fields/TextEntry';
import { useEdit } from '../fields/useEdit';
import { LoadState } from './LoadState';
import { OnLines } from './OnLines';
import { OnScales } from './OnScales';
import { OnStand } from './OnStand';
import { OnSwing } from './OnSwing';
import { OnTilt } from './OnTilt';

/** One weigh-in: what was read, and how the aircraft was then. */
export function Entry({ id }: { readonly id: string }) {
  const by = useCommitted((aircraft) => weighInById(aircraft, id)?.reading.by);
  const date = useCommitted((aircraft) => weighInById(aircraft, id)?.date ?? '');
  const burns = useCommitted(({ tanks }) => tanks.length > 0);
  return (
    <section className="weigh-entry" aria-label={`Weigh-in of ${dayWords(date, true)}`}>
      {by && <Reading by={by} id={id} />}
      <h3>How the aircraft was</h3>
      <div className="weigh-fields">
        <Day id={id} />
        {burns && (
          <Measure
            label="Fuel aboard"
            quantity="ratio"
            step="Change the fuel at a weigh-in"
            read={(aircraft) => weighInById(aircraft, id)?.fuelPct}
            write={(aircraft, fuelPct) => updateWeighIn(aircraft, id, { fuelPct })}
          />
        )}
        <LoadState id={id} />
        <TextEntry
          label="Weighed with"
          step="Change what it was weighed with"
          read={(aircraft) => weighInById(aircraft, id)?.tool}
          write={(aircraft, tool) => updateWeighIn(aircraft, id, { tool })}
        />
      </div>
      <TextEntry
        label="Notes"
        long
        step="Change the notes of a weigh-in"
        read={(aircraft) => weighInById(aircraft, id)?.notes}
        write={(aircraft, notes) => updateWeighIn(aircraft, id, { notes })}
      />
      <Corrected id={id} />
      <EditButton
        className="link weigh-remove"
        step={`Take the weigh-in of ${dayWords(date)} out of the log`}
        edit={(aircraft) => removeWeighIn(aircraft, id)}
      >
        Take this weigh-in out of the log
      </EditButton>
    </section>
  );
}

function Reading({ by, id }: { readonly by: WeighIn['reading']['by']; readonly id: string }) {
  switch (by) {
    case 'scales':
      return <OnScales id={id} />;
    case 'stand':
      return <OnStand id={id} />;
    case 'lines':
      return <OnLines id={id} />;
    case 'tilt':
      return <OnTilt id={id} />;
    case 'swing':
      return <OnSwing id={id} />;
  }
}

/** What was changed in the list because of this weigh-in. */
function Corrected({ id }: { readonly id: string }) {
  const corrected = useCommitted((aircraft) => weighInById(aircraft, id)?.corrected);
  if (!corrected || corrected.length === 0) return null;
  return (
    <>
      <h3>Corrected because of it</h3>
      <ul className="weigh-corrected">
        {corrected.map(({ date, what }, at) => (
          <li key={at}>
            <span>{what}</span>
            <span className="figure">{dayWords(date, true)}</span>
          </li>
        ))}
      </ul>
    </>
  );
}

function Day({ id }: { readonly id: string }) {
  const edit = useEdit();
  const date = useCommitted((aircraft) => weighInById(aircraft, id)?.date ?? '');
  const [fault, setFault] = useState<string | null>(null);
  return (
    <div className="field">
      <label htmlFor={`day ${id}`}>Day</label>
      <span className="entry">
        <input
          id={`day ${id}`}
          type="date"
          value={date}
          onChange={({ target }) => {
            if (target.value !== '') {
              setFault(
                edit('Change the day of a weigh-in', (aircraft) =>
                  updateWeighIn(aircraft, id, { date: target.value }),
                ),
              );
            }
          }}
        />
      </span>
      {fault && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}
