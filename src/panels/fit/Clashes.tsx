import { add } from '../../engine/geometry/vec3';
import { itemById, placeItem } from '../../model/document/edit';
import { shownText } from '../../model/document/names';
import { type Clearance, clashesIn, clearances } from '../../model/fit/clearances';
import { clearMove } from '../../model/fit/clearMove';
import { useAircraft, useFit } from '../../store/react';
import { EditButton } from '../fields/EditButton';
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
  const say = useReadings();
  const aircraft = useAircraft((now) => now);
  const item = itemById(aircraft, itemId);
  const by = clearMove(aircraft, itemId, clash);
  if (!item) return null;
  const depth = say.lengthFine(-clash.distanceMm);
  const words =
    clash.what === 'hull'
      ? `Pokes through ${shownText(clash.name)} by ${depth}.`
      : `Runs into ${shownText(clash.name)}, ${depth} deep.`;
  return (
    <div className="fit-clash">
      <p className="clash">
        <Icon name="warn" /> <span>{words}</span>
      </p>
      {by && (
        <EditButton
          disabled={item.locked === true}
          step={`Move ${item.name} clear of ${clash.name}`}
          edit={() => placeItem(aircraft, itemId, add(item.positionMm, by))}
        >
          Move clear ({wayWords(by, say)})
        </EditButton>
      )}
    </div>
  );
}
