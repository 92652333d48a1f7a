import { formatVolume } from '../../model/units';
import { fuelSensitivity, sensitivityRows } from '../../model/words/sensitivityRows';
import { useBalance, useBench } from '../../store/react';
import { Modal } from '../Modal';
import { useReadings } from '../readings';
import './sums.css';

/** How the CG answers to everything aboard. */
export function SensitivityDialog({ onClose }: { readonly onClose: () => void }) {
  const say = useReadings();
  const bench = useBench();
  const balance = useBalance((answer) => answer);
  const fuel = fuelSensitivity(balance, bench.view.getState().down);
  return (
    <Modal title="What moves the CG" onClose={onClose} wide>
      <div className="sheet">
        <p className="hint">
          How far the CG goes, aft +, when a thing gains {say.mass(10)} where it is, and when it moves{' '}
          {say.length(10)} aft. With the fuel and the load state shown.
        </p>
        {fuel && (
          <p>
            <strong>
              {formatVolume(fuel.drawnMl, say.units)} of fuel drawn: CG {say.offset(fuel.shiftMm[0])}.
            </strong>
          </p>
        )}
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable with the keyboard */}
        <section className="sheet-scroll" aria-label="Everything aboard" tabIndex={0}>
          <table>
            <thead>
              <tr>
                <td />
                <th scope="col">{say.mass(10)} more</th>
                <th scope="col">{say.length(10)} aft</th>
              </tr>
            </thead>
            <tbody>
              {sensitivityRows(balance).map(({ id, name, per10GMm, per10MmMm }) => (
                <tr key={id}>
                  <th scope="row">{name}</th>
                  <td className="figure">{say.shift(per10GMm[0])}</td>
                  <td className="figure">{say.shift(per10MmMm)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      </div>
    </Modal>
  );
}
