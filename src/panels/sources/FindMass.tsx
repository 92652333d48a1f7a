import { type FormEvent, useId, useState } from 'react';
import { enterFound, massFromWhole, type WholeWeighed } from '../../model/weigh/findMass';
import { heldAgainst } from '../../model/weigh/heldAgainst';
import { lastOfCg } from '../../model/weigh/weighIns';
import { dayWords } from '../../model/words/weighWords';
import { useBench, useCommitted, useView } from '../../store/react';
import { Refusal } from '../fields/EditButton';
import { readEntry } from '../fields/entryText';
import { useEdit } from '../fields/useEdit';
import { useReadings } from '../readings';

/** What a scale that takes a whole aircraft may be off by, g. Common practice: luggage and parcel scales read to 5 g. */
const SCALE_G = 5;

/** Ways to an unknown mass: from what the whole weighs as it is shown now, or from the last weigh-in. */
export function FindMass({ id, name }: { readonly id: string; readonly name: string }) {
  const bench = useBench();
  const say = useReadings();
  const units = useView((view) => view.units);
  const edit = useEdit();
  const [typed, setTyped] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const fieldId = useId();
  const weighIn = useCommitted(lastOfCg);
  const step = `Find the mass of ${name}`;

  const fromNow = (event: FormEvent) => {
    event.preventDefault();
    const entry = readEntry(typed, 'mass', units, false);
    if (!entry.ok) return setFault(entry.sentence);
    const whole: WholeWeighed = { massG: entry.value ?? 0, plusMinusG: SCALE_G };
    setFault(
      edit(step, (aircraft) => {
        const found = massFromWhole(aircraft, bench.balance.get(), id, whole, say.mass);
        return typeof found === 'string' ? found : enterFound(aircraft, id, found);
      }),
    );
  };

  const fromWeighIn = () =>
    setFault(
      edit(step, (aircraft) => {
        const held = weighIn && heldAgainst(aircraft, weighIn);
        if (!held?.ok || !held.weighed.massG) return 'In that weigh-in the whole was not weighed.';
        const { value, sigma } = held.weighed.massG;
        const whole: WholeWeighed = { massG: value, plusMinusG: 2 * sigma };
        const found = massFromWhole(aircraft, held.thought.balance, id, whole, say.mass);
        return typeof found === 'string' ? found : enterFound(aircraft, id, found);
      }),
    );

  return (
    <form className="find-mass" onSubmit={fromNow} data-testid="find-mass">
      <p className="hint">Find it: weigh the whole aircraft as it is shown now, tanks and all.</p>
      <div className="field">
        <label htmlFor={fieldId}>All up</label>
        <span className="entry">
          <input
            id={fieldId}
            type="text"
            autoComplete="off"
            className="figure"
            value={typed}
            placeholder="as weighed"
            onChange={(event) => setTyped(event.target.value)}
          />
        </span>
      </div>
      <p className="hint">A scale for that much is taken to be off by up to {say.mass(SCALE_G)}.</p>
      <button type="submit" className="button">
        Find the mass
      </button>
      {weighIn && (
        <button type="button" className="button" onClick={fromWeighIn}>
          From the weigh-in of {dayWords(weighIn.date)}
        </button>
      )}
      <Refusal fault={fault} />
    </form>
  );
}
