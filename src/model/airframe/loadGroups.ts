import type { Aircraft } from '../document/types';
import { structureMass, weighedAirframe } from './bodies';
import { combinations, thingsOf } from './flyingStates';
import { type AircraftSwitch, flyingSwitches, type Positions } from './loadSwitches';

/** Switches that bear on each other. What one group puts aboard does not depend on how another stands. */
export interface LoadGroup {
  readonly switches: readonly AircraftSwitch[];
  /** Whether it bears on what is in the tanks. At most one group does, as all tanks empty together. */
  readonly ofTanks: boolean;
  /** Every combination of its flying positions, at least one. Throws a RangeError when there are too many. */
  states(): readonly Positions[];
}

/**
 * The flying switches parted into groups. Switches belong together when they
 *
 * - name the same item, or one swings a leg that the other takes off;
 * - take off the ends of one lead, or a hull whose wall it follows;
 * - both leave out or empty tanks, for the outlet draws on all of them;
 * - take off elements of an airframe that weighed less than all that is ever taken off it, as less than nothing is not left.
 *
 * Everything else adds up: parts, elements with the pockets that were cut in them (they stay when the part is out), and
 * what a weighed airframe loses with an element.
 */
export function loadGroups(aircraft: Aircraft): readonly LoadGroup[] {
  const switches = flyingSwitches(aircraft);
  const things = switches.map((loadSwitch) => thingsOf(aircraft, loadSwitch));
  const hangTogether = [
    ...ofLeads(aircraft),
    ...ofTanks(aircraft),
    ...ofLightAirframe(aircraft, things.flat()),
  ];
  const group = switches.map((_, k) => k);
  const join = (a: number, b: number) => {
    const [from, to] = [group[a]!, group[b]!];
    group.forEach((groupIndex, k) => {
      if (groupIndex === from) group[k] = to;
    });
  };
  for (const ids of [...things.flat().map((id) => [id]), ...hangTogether]) {
    const concerned = switches.flatMap((_, k) => (ids.some((id) => things[k]!.includes(id)) ? [k] : []));
    for (const k of concerned) join(k, concerned[0]!);
  }
  const tankIds = new Set(aircraft.tanks.map(({ id }) => id));
  return [...new Set(group)].map((groupIndex) => {
    const members = switches.filter((_, k) => group[k] === groupIndex);
    return {
      switches: members,
      ofTanks: members.some((loadSwitch) => changesTanks(loadSwitch, tankIds)),
      states: () => combinations(members),
    };
  });
}

/** Whether any position of a switch leaves out or empties a tank. */
const changesTanks = ({ positions }: AircraftSwitch, tankIds: ReadonlySet<string>): boolean =>
  positions.some(({ without, empty }) => empty.length > 0 || without.some((id) => tankIds.has(id)));

/** Of each lead: its ends, and the hulls whose wall it may follow. */
const ofLeads = ({ leads = [], structure }: Aircraft): readonly (readonly string[])[] => {
  const hullIds = structure.flatMap(({ kind, id }) => (kind === 'fuselage' ? [id] : []));
  return leads.map(({ from, to, route }) => [from, to, ...(route === 'wall' ? hullIds : [])]);
};

const ofTanks = ({ tanks }: Aircraft): readonly (readonly string[])[] => [tanks.map(({ id }) => id)];

function ofLightAirframe(aircraft: Aircraft, switched: readonly string[]): readonly (readonly string[])[] {
  const weighed = weighedAirframe(aircraft);
  if (weighed?.by !== 'replacing') return [];
  const off = aircraft.structure.filter(({ id }) => switched.includes(id));
  if (structureMass(off).massG < weighed.body.mass.massG) return [];
  return [off.map(({ id }) => id)];
}
