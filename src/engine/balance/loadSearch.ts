import { along, type Heading, type LoadSwitch, loadedBy, type Options } from './bestLoad';
import { type BurnSearch, burnBoundMm, burnEnd, burnPeak, type Peak, SAME_MM } from './burnPeak';
import type { Bounds, LoadBurn, LoadExtreme, LoadState, SearchLimits } from './loadTypes';
import type { LiquidMoment } from './travel';

const TOLERANCE_MM = 0.01;

/**
 * Searches one heading after another. Every burn is looked at by its two ends first;
 * those that could hold something farther than the best so far are then searched, the most promising first.
 */
export function farthestOf(
  burns: readonly LoadBurn[],
  switches: readonly LoadSwitch[],
  { toleranceMm = TOLERANCE_MM }: SearchLimits,
  maySample: () => boolean,
): (heading: Heading) => LoadExtreme {
  return (heading) => {
    const options: Options = switches.map(({ positions }) =>
      positions.map(({ load }) => loadedBy(load, heading)),
    );
    const leastG = options.reduce((sum, part) => sum + Math.min(...part.map(({ massG }) => massG)), 0);
    const searches = burns.map(
      (burn): BurnSearch => ({
        heading,
        fixed: loadedBy(burn.fixed, heading),
        options,
        liquidAt: burn.liquidAt,
        breaks: burn.burns ? [0, 1] : [1],
        lightestG: burn.fixed.massG + leastG,
        reaches: burn.tanksMm?.map((bounds) => reachOf(bounds, heading)) ?? null,
        toleranceMm,
        floorMm: Number.NEGATIVE_INFINITY,
        maySample,
      }),
    );
    let at = 0;
    let best = burnEnd(searches[0]!);
    const consider = (peak: Peak, index: number) => {
      if (peak.cgMm > best.cgMm + SAME_MM) [best, at] = [peak, index];
    };
    searches.forEach((search, index) => {
      consider(burnEnd(search), index);
    });
    let withinMm: number | null = 0;
    const hopeful = searches
      .map((search, index) => ({ index, search, boundMm: burnBoundMm(search, best.cgMm) }))
      .sort((a, b) => b.boundMm - a.boundMm);
    for (const { index, search, boundMm } of hopeful) {
      if (!burns[index]!.burns) continue;
      // Its bound held against what was the best then; against a farther best it only holds less.
      if (boundMm <= toleranceMm) {
        withinMm = withinMm === null ? null : Math.max(withinMm, boundMm);
        continue;
      }
      const breaks = risingOnce(burns[index]!.breaks());
      const found = burnPeak({ ...search, breaks, floorMm: best.cgMm });
      consider(found.best, index);
      withinMm = withinMm === null || found.withinMm === null ? null : Math.max(withinMm, found.withinMm);
    }
    const burn = burns[at]!;
    const state = stateOf(burn, switches, burn.liquidAt(best.fuelFraction), best.chosen)!;
    return { ...state, withinMm: burns.every(({ burns: draws }) => !draws) ? 0 : withinMm };
  };
}

const reachOf = ({ min, max }: Bounds, heading: Heading): readonly [number, number] => {
  const ends = [along(heading, min), along(heading, max)] as const;
  return [Math.min(...ends), Math.max(...ends)];
};

/** The breaks in rising order with 0 and 1, each once. */
const risingOnce = (breaks: readonly number[]): number[] =>
  [...new Set([0, 1, ...breaks])].sort((a, b) => a - b);

/** A load state from the burn, the liquid and the chosen position of every switch; null when it weighs nothing. */
export function stateOf(
  { fixed, positions = {} }: Pick<LoadBurn, 'fixed' | 'positions'>,
  switches: readonly LoadSwitch[],
  liquid: LiquidMoment,
  chosen: readonly number[],
): LoadState | null {
  const named: Record<string, string> = { ...positions };
  const aboard = [fixed, liquid];
  switches.forEach((loadSwitch, k) => {
    const position = loadSwitch.positions[chosen[k]!]!;
    named[loadSwitch.id] = position.id;
    aboard.push(position.load);
  });
  const massG = aboard.reduce((sum, part) => sum + part.massG, 0);
  if (!(massG > 0)) return null;
  const moment = (axis: 0 | 1 | 2) => aboard.reduce((sum, { momentGmm }) => sum + momentGmm[axis], 0);
  return {
    cgMm: [moment(0) / massG, moment(1) / massG, moment(2) / massG],
    massG,
    fuelFraction: liquid.fuelFraction,
    positions: named,
  };
}
