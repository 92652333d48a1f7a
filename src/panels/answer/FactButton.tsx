import { memo, useState } from 'react';
import { createPortal } from 'react-dom';
import { farthestOut } from '../../model/judgement/states';
import type { Fact, FactKey } from '../../model/words/verdict';
import type { Figure } from '../../model/words/workingSheet';
import type { Bench } from '../../store/bench';
import { useBench } from '../../store/react';
import { setSwitch } from '../../store/viewStore';
import { later } from '../later';

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

interface FactButtonProps extends Omit<Fact, 'key'> {
  readonly of: FactKey;
}

/** One figure of the answer with its label; drawn again only when it reads differently. */
export const FactButton = memo(function FactButton({ of, label, value, note, tone }: FactButtonProps) {
  const bench = useBench();
  const [working, setWorking] = useState(false);
  const sum = sums[of];
  return (
    <>
      <button
        type="button"
        data-tone={tone}
        title={note ? `${note}. Press to ${does(of)}.` : `Press to ${does(of)}.`}
        onClick={() => (sum ? setWorking(true) : act(bench, of))}
      >
        <span className="fact-label">{label}</span>
        <span className="fact-value figure">{value}</span>
        <span className="unseen">
          {note && `, ${note}`}: {does(of)}
        </span>
      </button>
      {working &&
        sum &&
        // Away from the row, whose type the dialog would take on.
        createPortal(<WorkingDialog first={sum} onClose={() => setWorking(false)} />, document.body)}
    </>
  );
});
