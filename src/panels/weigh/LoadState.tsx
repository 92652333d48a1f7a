import { positionOf, switchesOf } from '../../model/airframe/loadSwitches';
import type { Aircraft } from '../../model/document/types';
import { positionsOf } from '../../model/weigh/thought';
import { updateWeighIn, weighInById } from '../../model/weigh/weighIns';
import { useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';

/** What was aboard, and how the legs stood. */
export function LoadState({ id }: { readonly id: string }) {
  const aircraft = useCommitted((committed) => committed);
  return switchesOf(aircraft).map((one) => (
    <Choice
      key={one.id}
      label={one.name}
      options={one.positions.map((position) => ({ value: position.id, label: position.name }))}
      step={`Change ${one.name.toLowerCase()} at a weigh-in`}
      read={(now) => {
        const entry = weighInById(now, id);
        return entry ? positionOf(one, positionsOf(entry)).id : '';
      }}
      write={(now, positionId) => put(now, id, one.id, positionId)}
    />
  ));
}

function put(aircraft: Aircraft, id: string, switchId: string, positionId: string): Aircraft {
  const others = weighInById(aircraft, id)?.switches.filter((one) => one.switchId !== switchId) ?? [];
  return updateWeighIn(aircraft, id, { switches: [...others, { switchId, positionId }] });
}
