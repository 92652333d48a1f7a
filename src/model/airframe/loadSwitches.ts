import { perObject, perObjects, sameList } from '../../engine/memory/memory';
import { UNDERCARRIAGE_ID } from '../document/ids';
import type { Aircraft, StructurePiece, SwitchItem } from '../document/types';
import { raisedLeg } from './retract';

/** The chosen position's id by the switch's id; a switch that is not named is in its first position. */
export type Positions = Readonly<Record<string, string>>;

/** All switches in their first position: legs down, everything aboard as the file has it. */
export const AT_START: Positions = {};

/** One position of a switch: what is not aboard, which tanks hold nothing, and whether the legs are up. */
export interface SwitchPosition {
  readonly id: string;
  readonly name: string;
  readonly without: readonly string[];
  readonly empty: readonly string[];
  readonly legsUp: boolean;
  /** False for one that is only ever chosen on the balancing stand. */
  readonly flies: boolean;
}

/** Something aboard that is in exactly one of its positions. */
export interface AircraftSwitch {
  readonly id: string;
  readonly name: string;
  readonly positions: readonly SwitchPosition[];
}

export { UNDERCARRIAGE_ID };

const stays = { without: [], empty: [], flies: true } as const;
const undercarriage: AircraftSwitch = {
  id: UNDERCARRIAGE_ID,
  name: 'Undercarriage',
  positions: [
    { id: 'down', name: 'down', ...stays, legsUp: false },
    { id: 'up', name: 'up', ...stays, legsUp: true },
  ],
};

const retracts = (element: StructurePiece) => element.kind === 'leg' && element.retract !== undefined;

const fromFile = ({ id, name, positions }: SwitchItem): AircraftSwitch => ({
  id,
  name,
  positions: positions.map(({ id, name, without = [], empty = [], onStand = false }) => ({
    id,
    name,
    without,
    empty,
    legsUp: false,
    flies: !onStand,
  })),
});

const fromFiles = perObject((switches: readonly SwitchItem[]): readonly AircraftSwitch[] =>
  switches.map(fromFile),
);

/** Every switch of the aircraft: the undercarriage if a leg retracts, then the file's in its order. */
export function switchesOf({ structure, switches = NONE }: Aircraft): readonly AircraftSwitch[] {
  const inFile = fromFiles(switches);
  return structure.some(retracts) ? [undercarriage, ...inFile] : inFile;
}

/** The same with only the positions that fly; a switch that is left with one still holds it in that one. */
export function flyingSwitches(aircraft: Aircraft): readonly AircraftSwitch[] {
  return switchesOf(aircraft).map((loadSwitch) => {
    const flying = loadSwitch.positions.filter(({ flies }) => flies);
    return flying.length === loadSwitch.positions.length || flying.length === 0
      ? loadSwitch
      : { ...loadSwitch, positions: flying };
  });
}

const NONE: readonly SwitchItem[] = [];

/** The position that a switch is in; one that it does not have counts as the first. */
export function positionOf({ id, positions }: AircraftSwitch, chosen: Positions): SwitchPosition {
  const at = positions.find((position) => position.id === chosen[id]) ?? positions[0];
  if (!at) throw new Error(`The switch "${id}" has no positions.`);
  return at;
}

/** A position in which everything is as the file has it. */
const changesNothing = ({ without, empty, legsUp }: SwitchPosition): boolean =>
  without.length === 0 && empty.length === 0 && !legsUp;

/**
 * The aircraft as it is with the switches so: what is not aboard left out, emptied tanks started with nothing,
 * legs swung up. A tank that fed one which is not aboard feeds what that one fed. The very aircraft when that changes
 * nothing; a list that did not change gives the same list again for the same positions.
 */
export function inLoadState(aircraft: Aircraft, chosen: Positions): Aircraft {
  const at = switchesOf(aircraft).map((loadSwitch) => positionOf(loadSwitch, chosen));
  if (at.every(changesNothing)) return aircraft;
  const without = [...new Set(at.flatMap((position) => position.without))].join(' ');
  const empty = [...new Set(at.flatMap((position) => position.empty))].join(' ');
  const legsUp = at.some((position) => position.legsUp);
  const { structure, tanks, parts } = aircraft;
  return {
    ...aircraft,
    structure: structureIn(structure, without, legsUp),
    tanks: tanksIn(tanks, without, empty),
    parts: partsIn(parts, without),
  };
}

/** Ids have no spaces in them, so a list of them is known again by the words that it makes. */
const idsIn = (words: string): ReadonlySet<string> => new Set(words.split(' '));

const structureIn = perObjects((structure: Aircraft['structure'], without: string, legsUp: boolean) => {
  const gone = idsIn(without);
  const left = structure
    .filter(({ id }) => !gone.has(id))
    .map((element) => (legsUp && element.kind === 'leg' ? raisedLeg(element) : element));
  return sameList(left, structure) ? structure : left;
});

const tanksIn = perObjects((tanks: Aircraft['tanks'], without: string, empty: string) => {
  const [gone, emptied] = [idsIn(without), idsIn(empty)];
  const left = tanks
    .filter(({ id }) => !gone.has(id))
    .map((tank) => {
      const started = emptied.has(tank.id) ? { ...tank, startMl: 0 } : tank;
      return gone.has(started.feeds)
        ? { ...started, feeds: nextAboard(tanks, started.feeds, gone) }
        : started;
    });
  return sameList(left, tanks) ? tanks : left;
});

const partsIn = perObjects((parts: Aircraft['parts'], without: string) => {
  const gone = idsIn(without);
  const left = parts.filter(({ id }) => !gone.has(id));
  return sameList(left, parts) ? parts : left;
});

/** Where liquid goes that a missing tank would have taken: along the feed to the first that is aboard, or the outlet. */
function nextAboard(tanks: Aircraft['tanks'], missing: string, without: ReadonlySet<string>): string {
  let id = missing;
  for (let steps = 0; steps <= tanks.length && without.has(id); steps += 1) {
    id = tanks.find((tank) => tank.id === id)?.feeds ?? 'outlet';
  }
  return without.has(id) ? 'outlet' : id;
}
