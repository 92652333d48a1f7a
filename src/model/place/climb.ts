import type { Around } from '../../engine/place/leadShares';
import { nextSteps, type Place, placesToTry, type Step } from '../../engine/place/nextSteps';
import type { PlaceProblem } from '../../engine/place/types';
import type { Refusal } from './fitRefusals';

/** What a climb asks of the aircraft itself. */
export interface Ground {
  /** What the fit and the ways in say against parts at places, whether or not they balance. */
  readonly refusals: (problem: PlaceProblem, places: Around, gramsG: readonly number[]) => readonly Refusal[];
  /** The problem with the moments that they really leave. */
  readonly corrected: (problem: PlaceProblem, places: Around, gramsG: readonly number[]) => PlaceProblem;
  /** Whether an id stands for something of the file; else it is new ballast. */
  readonly isOfFile: (id: string) => boolean;
  readonly leftMs: () => number;
}

/** Places are so far apart for one part moved, and for two at once, mm. */
const ONE_MM = 6;
const TWO_MM = 30;
/** A margin must gain so much to be worth a step, mm. */
const GAIN_MM = 0.05;
/** So many steps from one state are asked of the fit before it is given up, and so many of the ways in. */
const MOST_ASKED = 240;
const MOST_WAYS = 8;
/** Where a way in was not found, places nearer than this are not asked about from the same state, mm. */
const NO_WAY_MM = 15;

/** A state on the way of a climb. */
export interface Stand {
  /** With the moments that items really leave there. */
  readonly problem: PlaceProblem;
  readonly at: Pick<Step, 'places' | 'gramsG' | 'worth'>;
}

/** What has been refused for good, kept from one climb to the next. */
export interface Barred {
  readonly places: Set<string>;
  /** Near these no way in is looked for again. */
  readonly noWay: Spot[];
  /** Ballast spots, by id, at which it stood in the way. */
  readonly spots: Set<string>;
}

/** Places as they are, with the ballast that suits them best where it is not barred. */
export const standAt = (problem: PlaceProblem, places: Around, barred: Barred): Stand => ({
  problem,
  at: nextSteps(
    withoutBarred(problem, barred),
    places,
    problem.parts.map(() => []),
    GAIN_MM,
  ).at,
});

const withoutBarred = (problem: PlaceProblem, { spots: barred }: Barred): PlaceProblem => ({
  ...problem,
  spots: problem.spots.map((spot) => (barred.has(spot.id) ? { ...spot, mostG: 0 } : spot)),
});

/**
 * Climbs from places that can be built, over places that can be built, to better ones: in each step one part is put
 * elsewhere, or two where one is not enough, whatever betters the worth most of what nothing speaks against. `also` are
 * places to try besides. Ends where no step is better, or with the time; every state on the way comes back, the start first.
 */
export function climb(
  question: PlaceProblem,
  from: Around,
  also: readonly (readonly Place[])[],
  ground: Ground,
  barred: Barred,
): Stand[] {
  const asked = withoutBarred(question, barred);
  const [fine, coarse] = [ONE_MM, TWO_MM].map((stepMm) =>
    placesToTry(asked, stepMm).map((places, part) => [...(also[part] ?? []), ...places]),
  );
  let problem = asked;
  let places = from;
  const way: Stand[] = [];
  for (;;) {
    const ones = nextSteps(problem, places, fine!, GAIN_MM);
    way.push({ problem, at: ones.at });
    const next =
      firstSound(problem, ones.singles(), ground, barred) ??
      (ground.leftMs() > 0
        ? firstSound(problem, nextSteps(problem, places, coarse!, GAIN_MM).pairs(MOST_ASKED), ground, barred)
        : null);
    if (!next) return way;
    places = next.places;
    problem = ground.corrected(problem, places, next.gramsG);
  }
}

/** The first step that nothing speaks against. What is said against one part alone is remembered. */
function firstSound(
  problem: PlaceProblem,
  steps: readonly Step[],
  { refusals, isOfFile, leftMs }: Ground,
  { places: dead, noWay: neverAgain }: Barred,
): Step | null {
  let [asked, ways] = [0, 0];
  const noWay: Spot[] = [...neverAgain];
  for (const { places, changed, ...step } of steps) {
    if (asked >= MOST_ASKED || ways >= MOST_WAYS || leftMs() <= 0) return null;
    const put = changed.map((part): Spot => ({ part, place: places[part]! }));
    if (put.some((spot) => dead.has(keyOf(spot)) || noWay.some((other) => isNear(other, spot)))) continue;
    asked += 1;
    const said = refusals(problem, places, step.gramsG);
    if (said.length === 0) return { places, changed, ...step };
    const barred = put.filter(({ part }) =>
      said.some(({ what, ids }) => what === 'way in' && ids.includes(problem.parts[part]!.id)),
    );
    noWay.push(...barred);
    ways += Number(said.some(({ what }) => what === 'way in'));
    for (const spot of put) if (isAloneAtFault(problem, spot, said, isOfFile)) dead.add(keyOf(spot));
  }
  return null;
}

/** A part, by its number, at a place. */
export interface Spot {
  readonly part: number;
  readonly place: Place;
}

const keyOf = ({ part, place: { option, centreMm } }: Spot) => `${part} ${option} ${centreMm.join(' ')}`;

const isNear = (a: Spot, b: Spot) =>
  a.part === b.part &&
  a.place.option === b.place.option &&
  Math.hypot(...[0, 1].map((axis) => a.place.centreMm[axis]! - b.place.centreMm[axis]!)) < NO_WAY_MM;

/** Whether a part cannot stand at a place whatever else moves: for a wall, for something that stays. */
const isAloneAtFault = (
  { parts }: PlaceProblem,
  { part }: Spot,
  said: readonly Refusal[],
  isOfFile: (id: string) => boolean,
): boolean => {
  const ownId = parts[part]!.id;
  const staysOrOwn = (id: string) =>
    id === ownId || (isOfFile(id) && !parts.some((other) => other.id === id));
  return said.some(({ what, ids }) => what === 'fit' && ids.includes(ownId) && ids.every(staysOrOwn));
};
