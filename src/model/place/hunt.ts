import { bestInOrder } from '../../engine/place/held';
import type { Around } from '../../engine/place/leadShares';
import type { SolveMilp } from '../../engine/place/milp';
import type { Place } from '../../engine/place/nextSteps';
import { SAME_MARGIN_MM } from '../../engine/place/searchState';
import { arrangementOf, bendsAs } from '../../engine/place/settlePlaces';
import { shrunkBand } from '../../engine/place/shrunkBand';
import { SAME_G } from '../../engine/place/tolerances';
import type { Arrangement, PlaceProblem } from '../../engine/place/types';
import { type Barred, climb, type Ground, type Stand, standAt } from './climb';
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
    const stands = placed.find((each) => each.id === id);
    const option = options.findIndex((each) => each.id === stands?.optionId);
    return stands && option >= 0 ? [{ option, centreMm: stands.centreMm }] : [];
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
  const barred: Barred = { places: new Set(), noWay: [], spots: new Set() };
  // Where nothing need be moved but ballast put in, that is there at once.
  for (let tries = 0; tries <= asked.spots.length; tries++) {
    const spotsBefore = barred.spots.size;
    if (lastTaken([standAt(asked, from, barred)], offer, barred, ground)) break;
    if (barred.spots.size === spotsBefore) break;
  }
  let at = from;
  for (let turn = 0; turn < MOST_TURNS && ground.leftMs() > 0; turn++) {
    const way = climb(asked, at, also, ground, barred);
    const spotsBefore = barred.spots.size;
    const reached = lastTaken(way, offer, barred, ground);
    // What was refused leaves its ways known, so that the next climb keeps them clear.
    if (!reached && (way.at(-1)!.at.worth.shortMm === 0 || barred.spots.size > spotsBefore)) continue;
    if (!reached) return way.at(-1)!.at.places;
    const { places, worth } = reached.at;
    at = places;
    const polished = polish(reached.problem, places, worth.ballastG, means);
    if (polished) offer(polished.problem, polished.best);
    const there = polished && placesOf(polished.problem, polished.best.placed);
    const isGain =
      polished &&
      (polished.best.ballastG < worth.ballastG - SAME_G || polished.best.marginMm > worth.marginMm + GAIN_MM);
    if (there && isGain) at = there;
    else if (reached === way.at(-1)) return at;
  }
  return at;
}

/** More margin than this is worth another climb, mm. */
const GAIN_MM = 0.05;
/** So many states of a climb are held against the whole fit, back from its end. */
const MOST_OFFERED = 4;

/**
 * The last state of a climb that balances and is taken, looking back from its end in longer and longer strides, its start
 * last. What was moved to where no way in is found is barred. Null where none balances or none was taken.
 */
function lastTaken(
  way: readonly Stand[],
  offer: (problem: PlaceProblem, best: Arrangement) => readonly Refusal[] | null,
  barred: Barred,
  { isOfFile }: Ground,
): Stand | null {
  let stride = 1;
  let last = way.length - 1;
  for (let tries = 0; tries < MOST_OFFERED && last >= 0; tries++) {
    const stand = way[tries === MOST_OFFERED - 1 ? 0 : last]!;
    const { problem, at } = stand;
    if (at.worth.shortMm > 0) return null;
    const found = arrangementOf(problem, at.places, at.gramsG);
    const said = found ? offer(problem, found) : [];
    if (found && (said === null || said.length === 0)) return stand;
    const ids = (said ?? []).flatMap(({ what, ids: about }) => (what === 'way in' ? about : []));
    const isBallast = ids.some((id) => !isOfFile(id));
    const inTheWay = problem.spots.find(
      ({ id, body }, k) => isBallast && body && at.gramsG[k]! > 0 && !barred.spots.has(id),
    );
    if (inTheWay) barred.spots.add(inTheWay.id);
    problem.parts.forEach(({ id }, part) => {
      const place = at.places[part]!;
      if (ids.includes(id) && place.centreMm !== way[0]!.at.places[part]!.centreMm)
        barred.noWay.push({ part, place });
    });
    last -= stride;
    stride *= 2;
    if (last < 0 && last + stride / 2 > 0) last = 0;
  }
  return null;
}

const isFurther = (arrangement: Arrangement, than: Arrangement | undefined): boolean =>
  !than ||
  arrangement.ballastG < than.ballastG - 1e-6 ||
  arrangement.marginMm > than.marginMm + SAME_MARGIN_MM;

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
  const bends = asked.leads.some(bendsAs);
  for (const still of [new Set<number>(), stands]) {
    let [problem, around] = [asked, places];
    let kept: { readonly problem: PlaceProblem; readonly best: Arrangement } | null = null;
    for (let round = 0; round < ROUNDS && ground.leftMs() > 0; round++) {
      const best = bestInOrder(problem, around, still, solve, ballastG);
      const there = best && placesOf(problem, best.placed);
      if (!best || !there) break;
      const gramsG = problem.spots.map(
        ({ id }) => best.ballast.find(({ spotId }) => spotId === id)?.massG ?? 0,
      );
      if (ground.refusals(problem, there, gramsG).length > 0) break;
      problem = ground.corrected(problem, there, gramsG);
      const settled = arrangementOf(problem, there, gramsG);
      if (settled && isFurther(settled, kept?.best)) kept = { problem, best: settled };
      else if (kept) break;
      // A lead that bends pulls otherwise where it has come to: once more from there.
      if (kept && !bends) break;
      around = there;
    }
    if (kept) return kept;
  }
  return null;
}
