import { add } from '../../engine/geometry/vec3';
import { itemById, placeItem } from '../../model/document/edit';
import { type Clearance, clashesIn, clearances } from '../../model/fit/clearances';
import { clearMove } from '../../model/fit/clearMove';
import { useAircraft, useBench, useFit } from '../../store/react';
import { Icon } from '../icons';
import { useReadings } from '../readings';
import { wayWords } from './wayWords';

/** What the item runs into, how deep, and a button that moves it clear. */
export function Clashes({ id }: { readonly id: string }) {
  const list = useAircraft((aircraft) => clearances(aircraft, id));
  // On its way in it passes through the hatch, which the hull's distance knows nothing of.
  const playing = useFit((fit) => fit.playing);
  const clashes = playing ? [] : clashesIn(list);
  return clashes.map((clash) => <ClashLine key={`${clash.what} ${clash.id}`} itemId={id} clash={clash} />);
}

function ClashLine({ itemId, clash }: { readonly itemId: string; readonly clash: Clearance }) {
  const bench = useBench();
  const say = useReadings();
  const aircraft = useAircraft((now) => now);
  const item = itemById(aircraft, itemId);
  const by = clearMove(aircraft, itemId, clash);
  if (!item) return null;
  const depth = say.lengthFine(-clash.distanceMm);
  const words =
    clash.what === 'hull'
      ? `Pokes through ${clash.name} by ${depth}.`
      : `Runs into ${clash.name}, ${depth} deep.`;
  const move = () =>
    by &&
    bench.document.commit(
      `Move ${item.name} clear of ${clash.name}`,
      placeItem(aircraft, itemId, add(item.positionMm, by)),
    );
  return (
    <div className="fit-clash">
      <p className="clash">
        <Icon name="warn" /> <span>{words}</span>
      </p>
      {by && (
        <button type="button" className="button" disabled={item.locked === true} onClick={move}>
          Move clear ({wayWords(by, say)})
        </button>
      )}
    </div>
  );
}
