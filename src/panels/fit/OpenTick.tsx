import { itemById, updatePart, updateTank } from '../../model/document/edit';
import { Tick } from '../fields/Choice';

/** Whether an item is meant to stand outside, or to reach through the skin. */
export function OpenTick({ id, name }: { readonly id: string; readonly name: string }) {
  return (
    <Tick
      label="Meant to stand in the open, or to reach through the skin"
      step={`Say whether ${name} stands in the open`}
      read={(aircraft) => itemById(aircraft, id)?.inTheOpen === true}
      write={(aircraft, inTheOpen) => updateTank(updatePart(aircraft, id, { inTheOpen }), id, { inTheOpen })}
    />
  );
}
