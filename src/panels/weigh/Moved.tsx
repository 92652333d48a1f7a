import type { Updated } from '../../engine/weigh/reconcile';
import { formatLength, formatMass } from '../../model/units';
import type { HeldAgainst } from '../../model/weigh/heldAgainst';
import { lengthUp } from '../../model/words/say';
import { useReadings } from '../readings';

/** So many things are named. */
const MOST_NAMED = 4;
/** Less than this is not worth a line, g and mm. */
const WORTH = 0.1;

/** What weighing does to what is thought: how much surer the CG is, and what would move for it. Nothing is entered by it. */
export function Moved({ held }: { readonly held: HeldAgainst }) {
  const say = useReadings();
  const { before, after, updated } = held.reconciled;
  const [from, to] = [before.cgMm[0], after.cgMm[0]];
  const share = ({ movedG, massG, movedMm, positionMm }: Updated) =>
    Math.abs(movedG) / (massG.sigma + 1e-9) + Math.abs(movedMm[0]) / (positionMm[0].sigma + 1e-9);
  const moved = [...updated]
    .filter(({ movedG, movedMm }) => Math.abs(movedG) >= WORTH || Math.abs(movedMm[0]) >= WORTH)
    .sort((a, b) => share(b) - share(a))
    .slice(0, MOST_NAMED);
  return (
    <>
      <h3>List and measurement together</h3>
      <p>
        {`The likeliest CG of both is ${say.stationFine(to.value)}, ± ${lengthUp(2 * to.sigma, say)}; by the list alone it was ± ${lengthUp(2 * from.sigma, say)}.`}
        {!held.reconciled.agrees && ' As they do not agree, find out why before you trust it.'}
      </p>
      {moved.length > 0 && (
        <ul className="moved">
          {moved.map(({ id, movedG, movedMm }) => (
            <li key={id}>
              <span>{held.thought.names.get(id) ?? id}</span>
              <span className="figure">
                {[
                  Math.abs(movedG) >= WORTH && formatMass(movedG, say.units, { fine: true, signed: true }),
                  Math.abs(movedMm[0]) >= WORTH &&
                    formatLength(movedMm[0], say.units, { fine: true, signed: true }),
                ]
                  .filter(Boolean)
                  .join(', ')}
              </span>
            </li>
          ))}
        </ul>
      )}
      <p className="hint">Worked out from every ± in the list. Nothing in the list is changed by it.</p>
    </>
  );
}
