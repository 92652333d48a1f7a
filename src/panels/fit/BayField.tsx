import { add } from '../../engine/geometry/vec3';
import { perObjects } from '../../engine/memory/memory';
import { placeItem, updatePart } from '../../model/document/edit';
import { shownText } from '../../model/document/names';
import type { Aircraft } from '../../model/document/types';
import { bayFault } from '../../model/fit/bays';
import { useAircraft, useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';
import { EditButton } from '../fields/EditButton';
import { Icon } from '../icons';
import { useReadings } from '../readings';
import { bindToBay } from './roomEdits';
import { wayWords } from './wayWords';

const partOf = ({ parts }: Aircraft, id: string) => parts.find((part) => part.id === id);

const faultOf = perObjects((aircraft: Aircraft, id: string) => {
  const part = partOf(aircraft, id);
  return part ? bayFault(aircraft, part) : null;
});

const none = { value: '', label: 'None' };

/** The bay that a part must stay in, and how far it is out of it. */
export function BayField({ id, name }: { readonly id: string; readonly name: string }) {
  const say = useReadings();
  const bays = useCommitted((aircraft) => aircraft.bays);
  const fault = useAircraft((aircraft) => faultOf(aircraft, id));
  const locked = useCommitted((aircraft) => partOf(aircraft, id)?.locked === true);
  if (!bays || bays.length === 0) return null;
  const by = fault?.moveByMm;
  const moveIn = (aircraft: Aircraft): Aircraft => {
    const part = partOf(aircraft, id);
    return part && by ? placeItem(aircraft, id, add(part.positionMm, by)) : aircraft;
  };
  return (
    <>
      <Choice
        label="Bay"
        step={`Choose the bay of ${name}`}
        options={[none, ...bays.map((bay) => ({ value: bay.id, label: bay.name }))]}
        read={(aircraft) => partOf(aircraft, id)?.bayId ?? ''}
        write={(aircraft, bayId) =>
          bayId ? updatePart(aircraft, id, { bayId }) : bindToBay(aircraft, id, null)
        }
      />
      {fault && (
        <div className="fit-clash">
          <p className="clash">
            <Icon name="warn" />{' '}
            <span>
              {by
                ? `Reaches ${say.lengthFine(fault.overMm)} out of ${shownText(fault.bayName)}.`
                : `Too big for ${shownText(fault.bayName)} as it is turned, by ${say.lengthFine(fault.overMm)} at least.`}
            </span>
          </p>
          {by && (
            <EditButton disabled={locked} step={`Move ${name} into ${fault.bayName}`} edit={moveIn}>
              Move in ({wayWords(by, say)})
            </EditButton>
          )}
        </div>
      )}
    </>
  );
}
