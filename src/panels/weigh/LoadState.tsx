import { positionOf, switchesOf } from '../../model/airframe/loadSwitches';
import type { Aircraft } from '../../model/document/types';
import { positionsGone, positionsOf } from '../../model/weigh/thought';
import { updateWeighIn, weighInById } from '../../model/weigh/weighIns';
import { useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';

/** What was aboard, and how the legs stood. */
export function LoadState({ id }: { readonly id: string }) {
  const aircraft = useCommitted((committed) => committed);
  const entry = weighInById(aircraft, id);
  const gone = entry ? positionsGone(aircraft, entry) : [];
  return (
    <>
      {switchesOf(aircraft).map((each) => (
        <Choice
          key={each.id}
          label={each.name}
          options={each.positions.map((position) => ({ value: position.id, label: position.name }))}
          step={`Change ${each.name.toLowerCase()} at a weigh-in`}
          read={(now) => {
            const read = weighInById(now, id);
            return read ? positionOf(each, positionsOf(read)).id : '';
          }}
          write={(now, positionId) => put(now, id, each.id, positionId)}
        />
      ))}
      {gone.length > 0 && (
        <p className="hint">
          {`Noted then, and no longer in the list: ${gone.join(', ')}. It is left out here; choose what was aboard.`}
        </p>
      )}
    </>
  );
}

function put(aircraft: Aircraft, id: string, switchId: string, positionId: string): Aircraft {
  const others =
    weighInById(aircraft, id)?.switches.filter((loadSwitch) => loadSwitch.switchId !== switchId) ?? [];
  return updateWeighIn(aircraft, id, { switches: [...others, { switchId, positionId }] });
}
