import { flyingSwitches, type Positions, positionOf } from '../airframe/loadSwitches';
import { type Balance, balanceAt } from '../balance/balance';
import type { Aircraft } from '../document/types';
import { changesTanks } from '../loads/loadStates';
import type { Known } from './types';

/** Up to so many load states are looked at one by one; beyond, only the search in the worker covers them all. */
export const MOST_STATES = 16;

/** One load state with its balance. */
export interface StateBalance {
  readonly positions: Positions;
  readonly flies: boolean;
  readonly balance: Balance;
}

/** Every combination of the switches that flies; null when there are too many to look at one by one. */
export function flyingPositions(aircraft: Aircraft): readonly Positions[] | null {
  const switches = flyingSwitches(aircraft);
  const count = switches.reduce((product, { positions }) => product * positions.length, 1);
  if (count > MOST_STATES) return null;
  return switches.reduce<readonly Positions[]>(
    (all, { id, positions }) =>
      all.flatMap((chosen) => positions.map((one) => ({ ...chosen, [id]: one.id }))),
    [{}],
  );
}

/** Whether any switch changes what is in the tanks, which makes another burn of every combination. */
export function switchesTanks(aircraft: Aircraft): boolean {
  const tankIds = new Set(aircraft.tanks.map(({ id }) => id));
  return flyingSwitches(aircraft).some((one) => changesTanks(one, tankIds));
}

/** Whether a load state is one that flies, rather than one of the balancing stand. */
export function flies(aircraft: Aircraft, positions: Positions): boolean {
  return flyingSwitches(aircraft).every((one) => {
    const chosen = positions[one.id];
    return chosen === undefined || one.positions.some(({ id }) => id === chosen);
  });
}

/** The same with every switch named, so that two ways of saying one load state are one. */
function complete(aircraft: Aircraft, positions: Positions): Positions {
  return Object.fromEntries(flyingSwitches(aircraft).map((one) => [one.id, positionOf(one, positions).id]));
}

const samePositions = (a: Positions, b: Positions) => Object.keys(a).every((id) => a[id] === b[id]);

/** The load state shown first, then every other flying one; `all` says whether that is all of them. */
export function stateBalances(
  aircraft: Aircraft,
  { down, positions = {}, estimate, estimateFresh, balance }: Known,
): { readonly shown: StateBalance; readonly states: readonly StateBalance[]; readonly all: boolean } {
  const at = (chosen: Positions): Balance =>
    balanceAt(aircraft, {
      fuelFraction: 1,
      down,
      positions: chosen,
      estimate,
      ...(estimateFresh !== undefined && { estimateFresh }),
    });
  const shown: StateBalance = {
    positions,
    flies: flies(aircraft, positions),
    balance: balance ?? at(positions),
  };
  const combinations = flyingPositions(aircraft);
  const first = shown.flies ? [shown] : [];
  if (!combinations) {
    const start = complete(aircraft, {});
    return { shown, states: shown.flies ? first : [stateAt(start, at)], all: false };
  }
  const here = shown.flies ? complete(aircraft, positions) : null;
  const others = combinations.filter((one) => !here || !samePositions(one, here));
  return { shown, states: [...first, ...others.map((one) => stateAt(one, at))], all: true };
}

const stateAt = (positions: Positions, at: (chosen: Positions) => Balance): StateBalance => ({
  positions,
  flies: true,
  balance: at(positions),
});
