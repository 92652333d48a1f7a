import { flyingStart } from '../airframe/flyingStates';
import { loadGroups } from '../airframe/loadGroups';
import { type AircraftSwitch, inLoadState, type Positions, positionOf } from '../airframe/loadSwitches';
import { feedFaultsOf } from '../balance/liquidTable';
import type { Aircraft } from '../document/types';

/** A load state in which nothing can be drawn from the tanks, and why, in a sentence. */
export interface FeedFinding {
  readonly positions: Positions;
  readonly sentence: string;
}

/**
 * The load states whose tanks cannot feed: a switch takes off or empties one, and what is left cannot be drained as it is
 * plumbed. Each reason once, with the first combination of the switches that brings it about; empty when every flying load
 * state feeds. The fuel is counted as staying where it is in such a state.
 */
export function feedFindings(aircraft: Aircraft): readonly FeedFinding[] {
  const group = loadGroups(aircraft).find(({ ofTanks }) => ofTanks);
  if (!group) return [];
  const start = flyingStart(aircraft);
  const found = new Map<string, FeedFinding>();
  for (const chosen of statesOf(group.states)) {
    const positions = { ...start, ...chosen };
    const faults = feedFaultsOf(inLoadState(aircraft, positions)).join(' ');
    if (faults === '' || found.has(faults)) continue;
    const sentence = `With ${settingWords(group.switches, positions, start)} nothing can be drawn from the tanks, so their fuel is counted as staying where it is. ${faults}`;
    found.set(faults, { positions, sentence });
  }
  return [...found.values()];
}

/** Too many to go through is reported by the search through the load states, not here. */
function statesOf(states: () => readonly Positions[]): readonly Positions[] {
  try {
    return states();
  } catch (error) {
    if (error instanceof RangeError) return [];
    throw error;
  }
}

/** “Header tank” off and “Tip tank” empty: the switches that stand otherwise than at the start. */
function settingWords(switches: readonly AircraftSwitch[], positions: Positions, start: Positions): string {
  const moved = switches.filter(({ id }) => positions[id] !== start[id]);
  const words = (moved.length > 0 ? moved : switches).map(
    (loadSwitch) => `“${loadSwitch.name}” ${positionOf(loadSwitch, positions).name}`,
  );
  return words.join(' and ');
}
