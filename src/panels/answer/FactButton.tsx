import { memo, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import { farthestOut } from '../../model/judgement/states';
import type { Fact, FactKey } from '../../model/words/verdict';
import type { Figure } from '../../model/words/workingSheet';
import type { Bench } from '../../store/bench';
import { useBench } from '../../store/react';
import { setSwitch } from '../../store/viewStore';
import { setAttribute, setText } from '../drawing';
import { useWritten } from '../Live';
import { later } from '../later';
import { useReadings } from '../readings';
import { Term } from '../Term';
import { answerOf } from './answerOf';

const WorkingDialog = later(
  () => import('../sums/WorkingDialog'),
  (module) => module.WorkingDialog,
  { place: 'The working' },
);

/** Facts that are sums open the sum. */
const sums: Readonly<Partial<Record<FactKey, Figure>>> = {
  'cg-full': 'station',
  'cg-dry': 'station',
  margin: 'margin',
  sideways: 'buttline',
  mass: 'mass',
};

/** Facts that stand on the aircraft's card open their section of it. */
const folds: Readonly<Partial<Record<FactKey, string>>> = { band: 'band', travel: 'band', sure: 'sure' };

function openFold({ view }: Bench, id: string): void {
  view.setState(({ folds: open }) => ({ selectedId: null, folds: { ...open, [id]: true } }));
}

/** Puts the load state and the fuel that lie farthest out on the bench. */
function showWorst({ verdict, view }: Bench): void {
  const worst = farthestOut(verdict.judgement());
  if (!worst) return;
  for (const [id, position] of Object.entries(worst.positions)) setSwitch(view, id, position);
  view.setState({ fuelFraction: worst.fuelFraction, playing: false });
}

/** Selects the first thing that does not fit, with its fit open. */
function showFit({ verdict, view }: Bench): void {
  const party = verdict.judgement().fit?.[0]?.parties[0];
  if (party) view.setState(({ folds: open }) => ({ selectedId: party.id, folds: { ...open, fit: true } }));
}

/** What a fact that is no sum does when it is pressed. */
function act(bench: Bench, key: FactKey): void {
  const fold = folds[key];
  if (fold) openFold(bench, fold);
  else if (key === 'worst') showWorst(bench);
  else if (key === 'fit') showFit(bench);
  else if (key === 'power') bench.view.setState({ place: 'power', playing: false });
}

const does = (key: FactKey): string => {
  if (sums[key]) return 'show the working';
  if (key === 'worst') return 'put it on the bench';
  if (key === 'power') return 'open the wiring';
  return key === 'fit' ? 'show the first' : 'open it on the card';
};

/** Facts that are stations, read from the reference point. */
const stations: readonly FactKey[] = ['cg-full', 'cg-dry', 'band'];

/** What else is to be known of a fact, with where its station is read from when that is not the datum. */
function noteOf({ view }: Bench, { key, note }: Fact, from: string): string {
  const elsewhere = view.getState().measureFromId !== null && stations.includes(key);
  return [note, elsewhere ? `from ${from}` : ''].filter(Boolean).join(', ');
}

interface FactButtonProps {
  readonly of: FactKey;
  readonly label: string;
}

/** One figure of the answer with its label. The figure is written by hand, so that a drag renders none of them. */
export const FactButton = memo(function FactButton({ of, label }: FactButtonProps) {
  const say = useReadings();
  const bench = useBench();
  const [working, setWorking] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const sum = sums[of];
  useWritten((now) => {
    const fact = answerOf(now, say).facts.find(({ key }) => key === of);
    if (!fact || !button.current) return;
    const [, figure, more] = button.current.children;
    setAttribute(button.current, 'data-tone', fact.tone);
    setText(figure, fact.value);
    // What is only read aloud or on asking follows once the hand has let go.
    if (now.document.api.getState().preview) return;
    const note = noteOf(now, fact, say.from);
    setAttribute(button.current, 'title', note ? `${note}. Press to ${does(of)}.` : `Press to ${does(of)}.`);
    setText(more, `${note ? `, ${note}` : ''}: ${does(of)}`);
  });
  return (
    <>
      <Term of={of}>{label}</Term>
      <button
        ref={button}
        type="button"
        className="fact"
        onClick={() => (sum ? setWorking(true) : act(bench, of))}
      >
        <span className="unseen">{label} </span>
        <span className="fact-value figure" />
        <span className="unseen" />
      </button>
      {working &&
        sum &&
        // Away from the row, whose type the dialog would take on.
        createPortal(<WorkingDialog first={sum} onClose={() => setWorking(false)} />, document.body)}
    </>
  );
});
