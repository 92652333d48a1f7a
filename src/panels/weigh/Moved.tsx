import type { Updated } from '../../engine/weigh/reconcile';
import { formatMass } from '../../model/units';
import type { HeldAgainst } from '../../model/weigh/heldAgainst';
import { lengthUp } from '../../model/words/say';
import { type Readings, useReadings } from '../readings';

/** So many things are named. */
const MOST_NAMED = 4;
/** Less than this is not worth a line, g and mm. */
const WORTH = 0.1;

/** What weighing does to what is thought: how much surer the CG is, and what would move for it. Nothing is entered by it. */
export function Moved({ held }: { readonly held: HeldAgainst }) {
  const say = useReadings();
  const { before, after, updated } = held.reconciled;
  const [from, to] = [before.cgMm[0], after.cgMm[0]];
  const moved = [...updated]
    .filter((thing) => movedWords(thing, say).length > 0)
    .sort((a, b) => shareOf(b) - shareOf(a))
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
          {moved.map((thing) => (
            <li key={thing.id}>
              <span>{held.thought.names.get(thing.id) ?? thing.id}</span>
              <span className="figure">{movedWords(thing, say).join(', ')}</span>
            </li>
          ))}
        </ul>
      )}
      <p className="hint">Worked out from every ± in the list. Nothing in the list is changed by it.</p>
    </>
  );
}

const ways = [
  ['forward', 'aft'],
  ['left', 'right'],
  ['down', 'up'],
] as const;

/** "+2.1 g, 0.4 mm aft". */
function movedWords({ movedG, movedMm }: Updated, say: Readings): readonly string[] {
  const places = movedMm.flatMap((mm, axis) =>
    Math.abs(mm) >= WORTH ? [`${say.lengthFine(Math.abs(mm))} ${ways[axis]?.[mm > 0 ? 1 : 0]}`] : [],
  );
  return Math.abs(movedG) >= WORTH
    ? [formatMass(movedG, say.units, { fine: true, signed: true }), ...places]
    : places;
}

/** How far it moved against what it may be off by. */
const shareOf = ({ movedG, massG, movedMm, positionMm }: Updated) =>
  Math.abs(movedG) / (massG.sigma + 1e-9) +
  movedMm.reduce((sum, mm, axis) => sum + Math.abs(mm) / ((positionMm[axis]?.sigma ?? 0) + 1e-9), 0);
