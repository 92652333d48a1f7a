import type { Vec3 } from '../geometry/types';
import { stepsUp } from '../geometry/wholeSteps';
import { balanceRows, bindingRows } from './balanceRows';
import { type Bettered, ballastFor } from './ballastFor';
import { halfBeside, mostSteps, stepsWithin } from './ballastRoom';
import { AXES, centreRange, fitsRegion, gapAlong, gapBetween, straightGap, widest } from './regions';
import { SAME_MARGIN_MM } from './searchState';
import { SAME_G, SAME_MM } from './tolerances';
import type { PlaceBox, PlaceProblem } from './types';

/** A part's option, by its number, and the middle of its box, mm. */
export interface Place {
  readonly option: number;
  readonly centreMm: Vec3;
}

/** Some parts put elsewhere, by their numbers, and what comes of it with the ballast that suits it best. */
export interface Step {
  readonly places: readonly Place[];
  readonly changed: readonly number[];
  readonly gramsG: readonly number[];
  readonly worth: Worth;
}

/** How good a state is: short of the limits by so much, mm; then ballast, g; then the margin, mm; then moves. */
export interface Worth {
  readonly shortMm: number;
  readonly ballastG: number;
  readonly marginMm: number;
  readonly moves: number;
}

/** Shorter than this is not short, mm. */
const ENOUGH_MM = 1e-4;

/** Below 0 where the first is better. Margins count only where nothing is short. */
function compareWorth(a: Worth, b: Worth, sameMm = SAME_MARGIN_MM): number {
  if (Math.abs(a.shortMm - b.shortMm) > ENOUGH_MM) return a.shortMm - b.shortMm;
  if (Math.abs(a.ballastG - b.ballastG) > SAME_G) return a.ballastG - b.ballastG;
  if (Math.abs(a.marginMm - b.marginMm) > sameMm) return b.marginMm - a.marginMm;
  return a.moves - b.moves;
}

/** Places a part may be tried in: how far apart along, and how many across. */
const ACROSS = 5;

/**
 * Places to try for each part: along its regions in steps, at their sides and middle, and where it stands; as low as they
 * go. What meets an obstacle there is left out; its own place never is.
 */
export function placesToTry(problem: PlaceProblem, stepMm: number): Place[][] {
  const gapOf = gapBetween(problem);
  return problem.parts.map(({ id, options, present }) => {
    const isClear = (box: PlaceBox) =>
      problem.obstacles.every((wall) => keeps(box, wall, gapOf(id, wall.id)));
    return options.flatMap((option, k): Place[] => {
      if (!fitsRegion(option)) return [];
      const isPresent = option.id === present.optionId;
      const along = spread(centreRange(option, 0), stepMm, present.centreMm[0]);
      const { lowMm, highMm } = centreRange(option, 1);
      const across = spread(
        { lowMm, highMm },
        Math.max(stepMm, (highMm - lowMm) / ACROSS),
        present.centreMm[1],
      );
      const up = [centreRange(option, 2).lowMm];
      const places = along.flatMap((x) => across.flatMap((y) => up.map((z): Vec3 => [x, y, z])));
      const clear = places.filter((centreMm) => isClear(boxAt(option.sizeMm, centreMm)));
      const all = isPresent
        ? [present.centreMm, ...clear.filter((at) => !near(at, present.centreMm))]
        : clear;
      return all.map((centreMm) => ({ option: k, centreMm }));
    });
  });
}

/** From end to end in equal steps of that size or less, and a place of interest where it lies between. */
function spread(
  { lowMm, highMm }: { lowMm: number; highMm: number },
  stepMm: number,
  alsoMm: number,
): number[] {
  const count = Math.max(1, stepsUp((highMm - lowMm) / stepMm));
  const all =
    highMm - lowMm < SAME_MM
      ? [lowMm]
      : Array.from({ length: count + 1 }, (_, i) => lowMm + ((highMm - lowMm) * i) / count);
  return alsoMm > lowMm + SAME_MM && alsoMm < highMm - SAME_MM ? [...all, alsoMm] : all;
}

const near = (a: Vec3, b: Vec3) => AXES.every((axis) => Math.abs(a[axis] - b[axis]) < SAME_MM);

const boxAt = (sizeMm: Vec3, at: Vec3): PlaceBox => ({
  minMm: [at[0] - sizeMm[0] / 2, at[1] - sizeMm[1] / 2, at[2] - sizeMm[2] / 2],
  maxMm: [at[0] + sizeMm[0] / 2, at[1] + sizeMm[1] / 2, at[2] + sizeMm[2] / 2],
});

const keeps = (a: PlaceBox, b: PlaceBox, { axisMm, straightMm }: ReturnType<ReturnType<typeof gapBetween>>) =>
  Math.max(...AXES.map((axis) => gapAlong(a, b, axis))) >= axisMm - SAME_MM &&
  (straightMm <= 0 || straightGap(a, b) >= straightMm - SAME_MM);

/** What is known of steps from one state: the worth of any, and those that better it. */
export interface Stepping {
  readonly at: Step;
  /** Steps of one part that better the state, the best first. */
  singles(): Step[];
  /** Steps of two parts likewise; the best so many. */
  pairs(most: number): Step[];
}

/**
 * Steps from a state: parts put elsewhere one or two at a time among the places to try, in which nothing meets by its box,
 * with the least ballast that brings everything within the limits, or as near as it can. Leads pull as they do around the
 * state. `sameMm` is what a margin must gain to be better.
 */
export function nextSteps(
  problem: PlaceProblem,
  places: readonly Place[],
  toTry: readonly (readonly Place[])[],
  sameMm: number,
): Stepping {
  const rows = bindingRows(balanceRows(problem, places), 'margin');
  const gapOf = gapBetween(problem);
  const { parts, spots } = problem;
  const stack = spots.map((spot) => ({ spot, most: mostSteps(problem, spot) }));
  const gives = (part: number, { option, centreMm }: Place) =>
    rows.map(
      ({ axis, perPart, perOption }) => (perPart[part] ?? 0) * centreMm[axis] + perOption[part]![option]!,
    );
  const stands = places.map((place, part) => gives(part, place));
  const base = rows.map(({ needed }, r) => stands.reduce((sum, list) => sum + list[r]!, -needed));
  const boxOf = (part: number, { option, centreMm }: Place) =>
    boxAt(parts[part]!.options[option]!.sizeMm, centreMm);
  const boxes = places.map((place, part) => boxOf(part, place));
  const pair = (a: number, boxA: PlaceBox, b: number, boxB: PlaceBox) =>
    keeps(boxA, boxB, gapOf(parts[a]!.id, parts[b]!.id));
  const isStill = (part: number, { option, centreMm }: Place) => {
    const { optionId, centreMm: now } = parts[part]!.present;
    return parts[part]!.options[option]!.id === optionId && near(centreMm, now);
  };
  const still = places.map((place, part) => isStill(part, place));
  const movesNow = still.filter((is) => !is).length;
  /** The steps that each spot takes beside a part with its box here. */
  const leaves = (part: number, box: PlaceBox) =>
    spots.map((spot) => stepsWithin(spot, halfBeside(spot, box, widest(gapOf(spot.id, parts[part]!.id)))));
  const left = boxes.map((box, part) => leaves(part, box));
  const weighed = (
    values: readonly number[],
    moves: number,
    two: boolean,
    leftBy: (part: number) => readonly number[],
  ): Bettered & { worth: Worth } => {
    const beside = stack.map(({ spot, most }, k) => ({
      spot,
      most: parts.reduce((least, _, part) => Math.min(least, leftBy(part)[k]!), most),
    }));
    const found = ballastFor(values, rows, beside, two);
    const { shortMm, marginMm, ballastG } = found;
    return { ...found, worth: { shortMm, ballastG, marginMm, moves } };
  };
  const now = weighed(base, movesNow, true, (part) => left[part]!);
  const at: Step = { places, changed: [], gramsG: now.gramsG, worth: now.worth };
  const better = (step: Step) => compareWorth(step.worth, at.worth, sameMm) < 0;
  const changes = parts.map((_, part) =>
    toTry[part]!.flatMap((place) => {
      const before = places[part]!;
      if (place.option === before.option && near(place.centreMm, before.centreMm)) return [];
      const box = boxOf(part, place);
      const given = gives(part, place);
      const meets = parts.flatMap((_, other) =>
        other === part || pair(part, box, other, boxes[other]!) ? [] : [other],
      );
      const moves = Number(still[part]) - Number(isStill(part, place));
      const leftHere = leaves(part, box);
      return [
        {
          part,
          place,
          box,
          meets,
          moves,
          left: leftHere,
          by: given.map((value, r) => value - stands[part]![r]!),
        },
      ];
    }),
  );
  type Change = (typeof changes)[number][number];
  const stepOf = (made: readonly Change[]): Step | null => {
    const values = base.map((value, r) => made.reduce((sum, { by }) => sum + by[r]!, value));
    const { gramsG, worth } = weighed(
      values,
      made.reduce((sum, { moves }) => sum + moves, movesNow),
      made.length === 1,
      (part) => (made.find((each) => each.part === part)?.left ?? left[part])!,
    );
    const step = {
      places: places.map((place, part) => made.find((each) => each.part === part)?.place ?? place),
      changed: made.map(({ part }) => part),
      gramsG,
      worth,
    };
    return better(step) ? step : null;
  };
  const best = (steps: Step[]) => steps.sort((a, b) => compareWorth(a.worth, b.worth, 0));
  return {
    at,
    singles: () =>
      best(
        changes.flatMap((change) =>
          change.flatMap((each) => (each.meets.length === 0 ? (stepOf([each]) ?? []) : [])),
        ),
      ),
    pairs(most) {
      const found: Step[] = [];
      changes.forEach((ofPart, i) => {
        for (const others of changes.slice(0, i)) {
          for (const each of ofPart) {
            for (const other of others) {
              if (each.meets.some((part) => part !== other.part)) continue;
              if (other.meets.some((part) => part !== each.part)) continue;
              if (!pair(each.part, each.box, other.part, other.box)) continue;
              const step = stepOf([each, other]);
              if (step) found.push(step);
            }
          }
        }
      });
      return best(found).slice(0, most);
    },
  };
}
