import type { Aircraft } from '../document/types';
import { type AircraftSwitch, flyingSwitches, type Positions, positionOf, switchesOf } from './loadSwitches';

/**
 * Which load states fly. The one home of that rule: the verdict, the allowed zone, the arrangement and the fit hold items
 * to the flying states; a state that is only ever seen on the balancing stand is shown as information.
 */

/** More combinations than this are not gone through one by one: twelve switches of two positions. */
const MOST_STATES = 4096;

/** How the switches stand at the start of a flight: each in the first of its positions that fly. */
export const flyingStart = (aircraft: Aircraft): Positions =>
  Object.fromEntries(
    flyingSwitches(aircraft).flatMap(({ id, positions: [first] }) => (first ? [[id, first.id]] : [])),
  );

/** Whether the aircraft flies with the switches so: none is in a position that is only for the stand. */
export const isFlying = (aircraft: Aircraft, chosen: Positions): boolean =>
  switchesOf(aircraft).every((loadSwitch) => flies(loadSwitch, chosen));

/** A switch none of whose positions fly is held to all of them, as there is nothing else it could be in. */
const flies = (loadSwitch: AircraftSwitch, chosen: Positions): boolean =>
  positionOf(loadSwitch, chosen).flies || loadSwitch.positions.every((position) => !position.flies);

/**
 * Every combination of the flying positions. With `about` only the switches that bear on those items (parts, tanks,
 * elements, a leg that swings) are gone through, the others stay as at the start. Throws a RangeError with a sentence
 * beyond `MOST_STATES`.
 */
export function flyingStates(aircraft: Aircraft, about?: ReadonlySet<string>): readonly Positions[] {
  const switches = flyingSwitches(aircraft).filter(
    (loadSwitch) => !about || thingsOf(aircraft, loadSwitch).some((id) => about.has(id)),
  );
  const start = flyingStart(aircraft);
  return combinations(switches).map((chosen) => ({ ...start, ...chosen }));
}

/** Each position that is only for the balancing stand, with the other switches as at the start of a flight. */
export function standStates(aircraft: Aircraft): readonly Positions[] {
  const start = flyingStart(aircraft);
  return switchesOf(aircraft).flatMap((loadSwitch) =>
    loadSwitch.positions
      .filter(({ id }) => !flies(loadSwitch, { [loadSwitch.id]: id }))
      .map(({ id }) => ({ ...start, [loadSwitch.id]: id })),
  );
}

/** Every combination of some switches. Throws a RangeError with a sentence beyond `MOST_STATES`. */
export function combinations(switches: readonly AircraftSwitch[]): readonly Positions[] {
  const count = switches.reduce((product, { positions }) => product * positions.length, 1);
  if (count > MOST_STATES) {
    const names = switches.map(({ name }) => `“${name}”`).join(', ');
    throw new RangeError(
      `The switches ${names} make ${count} load states together; at most ${MOST_STATES} can be gone through.`,
    );
  }
  return switches.reduce<readonly Positions[]>(
    (all, { id, positions }) =>
      all.flatMap((chosen) => positions.map((position) => ({ ...chosen, [id]: position.id }))),
    [{}],
  );
}

/** Ids of all that a switch bears on: what it leaves out or empties, and the legs that it swings. */
export function thingsOf({ structure }: Aircraft, { positions }: AircraftSwitch): readonly string[] {
  const named = positions.flatMap(({ without, empty }) => [...without, ...empty]);
  const legs = positions.some(({ legsUp }) => legsUp)
    ? structure.flatMap((element) => (element.kind === 'leg' && element.retract ? [element.id] : []))
    : [];
  return [...new Set([...named, ...legs])];
}
