import { perObject } from '../../engine/memory/memory';
import type { Aircraft, SwitchItem } from '../document/types';
import {
  type AircraftSwitch,
  type Positions,
  positionOf,
  switchesOf,
  UNDERCARRIAGE_ID,
} from './loadSwitches';

/** One switch that has a say in something, and those of its positions in which it holds. */
export interface InPositions {
  readonly switchId: string;
  readonly switchName: string;
  readonly positions: readonly { readonly id: string; readonly name: string; readonly flies: boolean }[];
}

/**
 * The load states in which something holds: every switch named here in one of the positions given, all other
 * switches anyhow. Empty: in every load state.
 */
export type InStates = readonly InPositions[];

const ALWAYS: InStates = [];

/** Both of two sets of load states at once; null when they share none. */
export function bothStates(a: InStates, b: InStates): InStates | null {
  if (a.length === 0) return b;
  const shared: InPositions[] = [];
  for (const setting of a) {
    const other = b.find(({ switchId }) => switchId === setting.switchId);
    const positions = other
      ? setting.positions.filter(({ id }) => other.positions.some((position) => position.id === id))
      : setting.positions;
    if (positions.length === 0) return null;
    shared.push({ ...setting, positions });
  }
  return [...shared, ...b.filter(({ switchId }) => !a.some((setting) => setting.switchId === switchId))];
}

/** Whether every load state of `inner` is one of `outer`. */
export const withinStates = (inner: InStates, outer: InStates): boolean =>
  outer.every(({ switchId, positions }) => {
    const match = inner.find((setting) => setting.switchId === switchId);
    return match?.positions.every(({ id }) => positions.some((position) => position.id === id)) ?? false;
  });

/** Whether it holds with the switches so. */
export const holdsIn = (states: InStates, aircraft: Aircraft, chosen: Positions): boolean =>
  states.every(({ switchId, positions }) => {
    const match = switchesOf(aircraft).find(({ id }) => id === switchId);
    return match !== undefined && positions.some(({ id }) => id === positionOf(match, chosen).id);
  });

/** Whether it holds in a state that flies. */
export const holdsInFlight = (states: InStates): boolean =>
  states.every(({ positions }) => positions.some(({ flies }) => flies));

/**
 * Two sets of load states as one, where they differ in one switch only or one holds the other; null where the
 * two together are no such set.
 */
export function eitherStates(a: InStates, b: InStates, aircraft: Aircraft): InStates | null {
  if (withinStates(a, b)) return b;
  if (withinStates(b, a)) return a;
  if (a.length !== b.length) return null;
  const unlike = a.filter(
    (setting) =>
      !withinStates(
        a,
        b.filter(({ switchId }) => switchId === setting.switchId),
      ),
  );
  const [only] = unlike;
  const other = b.find(({ switchId }) => switchId === only?.switchId);
  const same = (setting: InPositions) => setting === only || withinStates(b, [setting]);
  if (unlike.length !== 1 || !only || !other || !a.every(same)) return null;
  const whole = switchesOf(aircraft).find(({ id }) => id === only.switchId);
  const of = (id: string) => [...only.positions, ...other.positions].find((position) => position.id === id);
  const positions = (whole?.positions ?? []).flatMap(({ id }) => of(id) ?? []);
  const rest = a.filter((setting) => setting !== only);
  return positions.length === whole?.positions.length ? rest : [...rest, { ...only, positions }];
}

const NONE: readonly SwitchItem[] = [];

/** The load states in which a part, a tank or a piece of structure is aboard, by its id in the file. */
export const aboardIn = ({ switches = NONE }: Aircraft, id: string): InStates =>
  absences(switches).get(id) ?? ALWAYS;

const absences = perObject((switches: readonly SwitchItem[]): ReadonlyMap<string, InStates> => {
  const named = new Set(
    switches.flatMap(({ positions }) => positions.flatMap(({ without = [] }) => without)),
  );
  const of = (id: string) =>
    switches.flatMap((item): InPositions[] => {
      if (!item.positions.some(({ without }) => without?.includes(id))) return [];
      const positions = item.positions
        .filter(({ without }) => !without?.includes(id))
        .map(({ id: position, name, onStand = false }) => ({ id: position, name, flies: !onStand }));
      return [{ switchId: item.id, switchName: item.name, positions }];
    });
  return new Map([...named].map((id) => [id, of(id)]));
});

/** The load states with the legs up, or down, of an aircraft with a leg that retracts. */
export function legsIn(aircraft: Aircraft, up: boolean): InStates {
  const match: AircraftSwitch | undefined = switchesOf(aircraft).find(({ id }) => id === UNDERCARRIAGE_ID);
  if (!match) return ALWAYS;
  const positions = match.positions.filter(({ legsUp }) => legsUp === up);
  return [{ switchId: match.id, switchName: match.name, positions }];
}
