import type { InStates } from '../airframe/aboard';
import { UNDERCARRIAGE_ID } from '../airframe/loadSwitches';
import { listed, midSentence } from '../document/inWords';
import type { FitParty, FitProblem } from '../fit/wholeFit';
import type { Say } from './say';

/** Distances of fit, with one decimal in metric. */
export interface FitSay extends Say {
  lengthFine(mm: number): string;
}

/** "wheels up", "camera on and canopy off": the load states in which something holds; empty for all. */
export function inStatesWords(states: InStates): string {
  const words = states.map(({ switchId, switchName, positions }) => {
    const names = positions.map(({ name }) => name).join(' or ');
    return switchId === UNDERCARRIAGE_ID ? `wheels ${names}` : `${midSentence(switchName)} ${names}`;
  });
  return listed(words);
}

/** The party that a problem is in the way of, seen from a thing. */
const otherOf = ({ parties }: FitProblem, id: string): FitParty | undefined =>
  parties.find((party) => party.id !== id && party.what !== 'lead') ?? parties[1];

/**
 * A problem as the thing with that id has it, in one sentence: "Runs into Nose leg, 5.7 mm deep, wheels up."
 * The subject is left out; it is the card's or the row's.
 */
export function problemSentence(problem: FitProblem, id: string, say: FitSay): string {
  const { kind, rule } = problem;
  const state = inStatesWords(problem.states);
  const when = state ? `, ${state}` : '';
  const other = otherOf(problem, id)?.name ?? '';
  const by = say.lengthFine(problem.byMm);
  switch (kind) {
    case 'overlap':
      return `Runs into ${other}, ${by} deep${when}.`;
    case 'within':
      return `In one place with ${other}, one inside the other${when}.`;
    case 'through':
      return `Reaches ${by} out of ${other}${when}.`;
    case 'outside':
      return `Stands outside, up to ${by} off ${other}${when}.`;
    case 'outOfBay':
      return `Reaches ${by} out of ${other}${when}.`;
    case 'shortLead':
      return `${problem.parties[0].name} is ${by} short${when}.`;
    case 'tooNear': {
      const apart = say.lengthFine(Math.max(0, (rule?.atLeastMm ?? 0) - problem.byMm));
      return `${apart} from ${other}, at least ${say.length(rule?.atLeastMm ?? 0)} wanted${when}: ${rule?.why ?? ''}.`;
    }
    case 'thinWall':
      return `Its cut-out leaves the wall of ${other} ${by} too thin${when}.`;
    case 'keptFree':
      return `Reaches ${by} into ${other}, where no ballast may be${when}.`;
  }
}

/** The same in a few words, for a row of the manifest: "hit by Nose leg, wheels up". */
export function problemShort(problem: FitProblem, id: string): string {
  const other = otherOf(problem, id)?.name ?? '';
  const state = inStatesWords(problem.states);
  return `${shortOf(problem, id, other)}${state ? `, ${state}` : ''}`;
}

function shortOf({ kind, parties }: FitProblem, id: string, other: string): string {
  switch (kind) {
    case 'overlap':
      // What swings is said to hit what stands still.
      return parties[1]?.id === id || parties[1]?.pieceId.includes('.wheel')
        ? `hit by ${other}`
        : `in ${other}`;
    case 'within':
      return parties[0].id === id ? `inside ${other}` : `has ${other} inside it`;
    case 'through':
      return `out of ${other}`;
    case 'outside':
      return `outside ${other}`;
    case 'outOfBay':
      return `out of ${other}`;
    case 'shortLead':
      return parties[0].id === id ? 'too short' : `${midSentence(parties[0].name)} too short`;
    case 'tooNear':
      return `too near ${other}`;
    case 'thinWall':
      return `thin wall in ${other}`;
    case 'keptFree':
      return `in ${other}, kept free of ballast`;
  }
}
