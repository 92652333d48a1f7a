import { useState } from 'react';
import { type Figure, workingSheet } from '../../model/words/workingSheet';
import { useBalance, useBench } from '../../store/react';
import { Modal } from '../Modal';
import { useReadings } from '../readings';
import { SheetView } from './SheetView';
import { useFrom } from './useFrom';

const figures: readonly { readonly figure: Figure; readonly label: string }[] = [
  { figure: 'mass', label: 'Mass' },
  { figure: 'station', label: 'CG station' },
  { figure: 'buttline', label: 'CG buttline' },
  { figure: 'waterline', label: 'CG waterline' },
  { figure: 'margin', label: 'Static margin' },
];

/** The sums behind the main figures, one at a time. */
export function WorkingDialog({ first, onClose }: { readonly first: Figure; readonly onClose: () => void }) {
  const [figure, setFigure] = useState(first);
  const bench = useBench();
  const { units } = useReadings();
  const balance = useBalance((answer) => answer);
  const from = useFrom();
  const sheet = workingSheet(figure, bench.document.current(), balance, units, from);
  const label = figures.find((choice) => choice.figure === figure)?.label ?? '';
  return (
    <Modal title="The working" onClose={onClose} wide>
      <fieldset className="segments">
        <legend className="unseen">Figure</legend>
        {figures
          .filter((choice) => choice.figure !== 'margin' || balance.margin)
          .map((choice) => (
            <button
              key={choice.figure}
              type="button"
              aria-pressed={choice.figure === figure}
              onClick={() => setFigure(choice.figure)}
            >
              {choice.label}
            </button>
          ))}
      </fieldset>
      {sheet ? (
        <SheetView key={figure} title={label} sheet={sheet} asWords={figure === 'margin'} />
      ) : (
        <p className="hint">Nothing aboard weighs anything yet.</p>
      )}
    </Modal>
  );
}
