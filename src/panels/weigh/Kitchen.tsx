import { useId, useMemo, useState } from 'react';
import { heldAgainst } from '../../model/weigh/heldAgainst';
import { enterWeighed, type ToWeigh, toWeigh } from '../../model/weigh/toWeigh';
import { lastOfCg } from '../../model/weigh/weighIns';
import { dayWords, sumWords } from '../../model/words/weighWords';
import { useBench, useCommitted } from '../../store/react';
import { entryText, readEntry } from '../fields/entryText';
import { useEdit } from '../fields/useEdit';
import { useEntry } from '../fields/useEntry';
import { Icon } from '../icons';
import { useReadings } from '../readings';
import { today } from './today';

/** Steps that kitchen scales have, g. */
const STEPS = [0.1, 1, 2, 5] as const;

/** Part by part at the kitchen scale, what matters most for the CG first. */
export function Kitchen() {
  const bench = useBench();
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const [step, setStep] = useState<number>(1);
  // The order is that of the moment the list was opened: nothing jumps away under the hand that ticks it off.
  const order = useMemo(() => toWeigh(aircraft, bench.balance.get()).map(({ id }) => id), [bench]);
  const now = new Map(toWeigh(aircraft, bench.balance.get()).map((each) => [each.id, each]));
  const list = order.flatMap((id) => now.get(id) ?? []);
  const done = list.filter(({ weighedOn }) => weighedOn !== null);
  return (
    <section className="kitchen" aria-label="Part by part">
      <div className="kitchen-head">
        <p>
          <strong>{`${done.length} of ${list.length} weighed`}</strong>
          {`, ${say.mass(done.reduce((sum, { massG }) => sum + massG, 0))} of ${say.mass(list.reduce((sum, { massG }) => sum + massG, 0))}. What moves the CG most comes first. Structure is weighed on its own card.`}
        </p>
        <Sums />
        <fieldset>
          <legend>Scale reads to</legend>
          {STEPS.map((grams) => (
            <label key={grams}>
              <input
                type="radio"
                name="kitchen-step"
                checked={step === grams}
                onChange={() => setStep(grams)}
              />
              {`${grams} g`}
            </label>
          ))}
        </fieldset>
      </div>
      <ol>
        {list.map((thing) => (
          <Line key={thing.id} thing={thing} step={step} />
        ))}
      </ol>
    </section>
  );
}

/** What all of the list comes to, against the whole as it was weighed last. */
function Sums() {
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const last = lastOfCg(aircraft);
  const held = last && heldAgainst(aircraft, last);
  if (!last || !held?.ok || !held.weighed.massG) return null;
  return (
    <p className="hint">
      {sumWords(held.reconciled.before.massG, held.weighed.massG, dayWords(last.date), say)}
    </p>
  );
}

function Line({ thing, step }: { readonly thing: ToWeigh; readonly step: number }) {
  const { id, name, massG, effectMm, weighedOn } = thing;
  const say = useReadings();
  const edit = useEdit();
  const fieldId = useId();
  const enter = (grams: number) =>
    edit(`Weigh ${name}`, (aircraft) =>
      // A display that rounds to its step is off by half of it at most, and twice step/√12 is a little more.
      enterWeighed(aircraft, id, {
        massG: grams,
        plusMinusG: Math.ceil(step * 5.78) / 10,
        weighedOn: today(),
      }),
    );
  const [fault, setFault] = useState<string | null>(null);
  const entry = useEntry(entryText(massG, 'mass', say.units), (text) => {
    const typed = readEntry(text, 'mass', say.units, false);
    if (!typed.ok) return typed.sentence;
    return typed.value === null ? 'Type a figure.' : enter(typed.value);
  });
  const sentence = entry.fault ?? fault;
  return (
    <li data-weighed={weighedOn !== null || undefined}>
      <label htmlFor={fieldId}>
        <strong>{name}</strong>
        <span>
          {weighedOn
            ? `weighed ${dayWords(weighedOn)}`
            : `its ± moves the CG by ${say.shift(effectMm).replace('+', '')}`}
        </span>
      </label>
      <span className="entry">
        <input
          id={fieldId}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          className="figure"
          {...entry.input}
        />
      </span>
      <button
        type="button"
        className="button kitchen-tick"
        aria-label={weighedOn ? `${name} is weighed` : `${name} weighs just that`}
        aria-pressed={weighedOn !== null}
        onClick={() => setFault(enter(massG))}
      >
        <Icon name="tick" />
      </button>
      {sentence && (
        <p id={entry.faultId} className="fault" role="alert">
          {sentence}
        </p>
      )}
    </li>
  );
}
