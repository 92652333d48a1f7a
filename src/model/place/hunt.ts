import { bestInOrder } from '../../engine/place/held';
import type { Around } from '../../engine/place/leadShares';
import type { SolveMilp } from '../../engine/place/milp';
import type { Place } from '../../engine/place/nextSteps';
import { arrangementOf } from '../../engine/place/settlePlaces';
import { shrunkBand } from '../../engine/place/shrunkBand';
import type { Arrangement, PlaceProblem } from '../../engine/place/types';
import { climb, type Ground } from './climb';
import type { Refusal } from './fitRefusals';
import type { Soundest } from './soundest';

export interface HuntMeans {
  readonly ground: Ground;
  readonly soundest: Soundest;
  readonly solve: SolveMilp;
}

/** Where an arrangement has put things, by the options of a problem that it was found in; null where one is unknown. */
export function placesOf({ parts }: PlaceProblem, placed: Arrangement['placed']): Around | null {
  const places = parts.flatMap(({ id, options }): Place[] => {
    const own = placed.find((each) => each.id === id);
    const option = options.findIndex((each) => each.id === own?.optionId);
    return own && option >= 0 ? [{ option, centreMm: own.centreMm }] : [];
  });
  return places.length === parts.length ? places : null;
}

/** Climbs and polishes by turns at most so often. */
const MOST_TURNS = 5;

/**
 * Looks for arrangements that can be built, from one that can and by way of such alone: first with the margin that is wanted,
 * else within the plain limits. `also` are places worth trying besides. What nothing speaks against goes to the soundest.
 */
export function hunt(
  { wantedMarginMm = 0, ...plain }: PlaceProblem,
  from: Around,
  also: readonly (readonly Place[])[],
  means: HuntMeans,
): void {
  const narrow = wantedMarginMm > 0 ? shrunkBand(plain.band, wantedMarginMm) : null;
  const wide = { problem: plain as PlaceProblem, keptMm: 0 };
  const aims = narrow ? [{ problem: { ...plain, band: narrow }, keptMm: wantedMarginMm }, wide] : [wide];
  let at = from;
  for (const { problem, keptMm } of aims) {
    const kept = means.soundest.best()?.keptMarginMm ?? -1;
    if (kept > keptMm || means.ground.leftMs() <= 0) return;
    at = turnsFrom(problem, at, also, keptMm, means);
  }
}

function turnsFrom(
  asked: PlaceProblem,
  from: Around,
  also: readonly (readonly Place[])[],
  keptMm: number,
  means: HuntMeans,
): Around {
  const { ground, soundest } = means;
  const offer = (problem: PlaceProblem, best: Arrangement): readonly Refusal[] | null => {
    const { forwardMm, aftMm } = problem.band;
    return soundest.take({
      best: { ...best, marginMm: best.marginMm + keptMm },
      problem: { ...problem, band: { forwardMm: forwardMm - keptMm, aftMm: aftMm + keptMm } },
      keptMarginMm: keptMm,
    });
  };
  let at = from;
  for (let turn = 0; turn < MOST_TURNS && ground.leftMs() > 0; turn++) {
    const summit = climb(asked, at, also, ground);
    const { places, gramsG, worth } = summit.at;
    if (worth.shortMm > 0) return places;
    const found = arrangementOf(summit.problem, places, gramsG);
    // What was refused for its ways in leaves these ways known, and the climb keeps them clear from then on.
    if (found && offer(summit.problem, found)?.some(({ what }) => what === 'way in')) continue;
    at = places;
    const polished = polish(summit.problem, places, worth.ballastG, means);
    if (!polished) return at;
    offer(polished.problem, polished.best);
    const there = placesOf(polished.problem, polished.best.placed);
    const { ballastG, marginMm } = polished.best;
    if (!there || (ballastG > worth.ballastG - 1e-6 && marginMm < worth.marginMm + 0.05)) return at;
    at = there;
  }
  return at;
}

/** Rounds in which the moments are put right and the distances settled again. */
const ROUNDS = 3;

/** The best with the same options and in the same order, if it can be built; parts go back where that costs nothing. */
function polish(
  asked: PlaceProblem,
  places: Around,
  ballastG: number,
  { ground, solve }: HuntMeans,
): { readonly problem: PlaceProblem; readonly best: Arrangement } | null {
  const stands = new Set(
    places.flatMap(({ option, centreMm }, part) => {
      const { present, options } = asked.parts[part]!;
      const isThere = options[option]!.id === present.optionId && centreMm === present.centreMm;
      return isThere ? [part] : [];
    }),
  );
  // What has not been moved stays at first: moving it must gain something.
  for (const still of [new Set<number>(), stands]) {
    let problem = asked;
    for (let round = 0; round < ROUNDS && ground.leftMs() > 0; round++) {
      const best = bestInOrder(problem, places, still, solve, ballastG);
      const there = best && placesOf(problem, best.placed);
      if (!best || !there) break;
      const gramsG = problem.spots.map(
        ({ id }) => best.ballast.find(({ spotId }) => spotId === id)?.massG ?? 0,
      );
      if (ground.refusals(problem, there, gramsG).length > 0) break;
      problem = ground.corrected(problem, there, gramsG);
      const settled = arrangementOf(problem, there, gramsG);
      if (settled) return { problem, best: settled };
    }
  }
  return null;
}
