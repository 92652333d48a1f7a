import type { Refusal } from '../../engine/weigh/figure';
import { type HeldAgainst, heldAgainst } from '../../model/weigh/heldAgainst';
import { weighInById } from '../../model/weigh/weighIns';
import { useCommitted } from '../../store/react';

/** A weigh-in held against the list as it is now. */
export function useHeld(id: string): HeldAgainst | Refusal | null {
  return useCommitted((aircraft) => {
    const entry = weighInById(aircraft, id);
    return entry ? heldAgainst(aircraft, entry) : null;
  });
}
