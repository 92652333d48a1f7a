import { flyingStart, flyingStates, isFlying } from '../airframe/flyingStates';
import { flyingSwitches, type Positions, positionOf } from '../airframe/loadSwitches';
import { type Balance, balanceAt } from '../balance/balance';
import type { Aircraft } from '../document/types';
import type { Known } from './types';

/** Up to so many load states are looked at one by one; beyond, only the search in the worker covers them all. */
const MOST_LOOKED_AT = 16;

/** One load state with its balance. */
export interface StateBalance {
  readonly positions: Positions;
  readonly flies: boolean;
  readonly balance: Balance;
}

/** The load states of an aircraft that are looked at along their burns. */
export interface StateBalances {
  readonly shown: StateBalance;
  /** Those that fly; the one shown first when it does. */
  readonly states: readonly StateBalance[];
  /** Whether these are all that fly. */
  readonly all: boolean;
}

/** The load state shown and, while there are few, every other that flies. */
export function stateBalances(
  aircraft: Aircraft,
  { down, positions = {}, estimate, estimateFresh, balance }: Known,
): StateBalances {
  const stateAt = (chosen: Positions, ready?: Balance): StateBalance => ({
    positions: chosen,
    flies: isFlying(aircraft, chosen),
    balance:
      ready ??
      balanceAt(aircraft, {
        fuelFraction: 1,
        down,
        positions: chosen,
        estimate,
        ...(estimateFresh !== undefined && { estimateFresh }),
      }),
  });
  const shown = stateAt(positions, balance);
  const count = flyingSwitches(aircraft).reduce(
    (product, loadSwitch) => product * loadSwitch.positions.length,
    1,
  );
  const all = count <= MOST_LOOKED_AT;
  const flying = all ? flyingStates(aircraft) : shown.flies ? [] : [flyingStart(aircraft)];
  const others = flying.filter((chosen) => !shown.flies || !isSame(aircraft, chosen, positions));
  return {
    shown,
    states: [...(shown.flies ? [shown] : []), ...others.map((chosen) => stateAt(chosen))],
    all,
  };
}

/** Whether two ways of naming the switches' positions are one load state. */
const isSame = (aircraft: Aircraft, a: Positions, b: Positions): boolean =>
  flyingSwitches(aircraft).every(
    (loadSwitch) => positionOf(loadSwitch, a).id === positionOf(loadSwitch, b).id,
  );
