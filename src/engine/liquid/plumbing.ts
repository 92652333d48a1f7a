import type { Vec3 } from '../geometry/types';
import { levelVolumes } from './levelShare';
import { liquidState } from './liquidState';
import { plumbingFaults } from './plumbingFaults';
import type { LiquidState, Tank } from './types';

/** Tanks that drain together: those of one rank that feed the same place. */
export interface FeedGroup {
  readonly share: Tank['share'];
  readonly branches: readonly FeedBranch[];
  /** Usable liquid in all of them and in what feeds them, ml. */
  readonly usableMl: number;
}

/** A tank with all that feeds it. */
export interface FeedBranch {
  /** Index into `Plumbing.tanks`. */
  readonly tank: number;
  /** In the order in which they drain. */
  readonly feeders: readonly FeedGroup[];
  readonly ownUsableMl: number;
  /** What its feeders can give it, ml. */
  readonly fedMl: number;
  readonly usableMl: number;
}

/** Tanks in the order in which they reach the outlet. */
export interface Plumbing {
  readonly tanks: readonly Tank[];
  /** What feeds the outlet, in the order in which it drains. */
  readonly outlet: readonly FeedGroup[];
  /** All that the outlet can draw, ml. */
  readonly usableMl: number;
}

/**
 * Works out the feed order, or says in a sentence each what is wrong with it. No tanks at all is a valid aircraft.
 *
 * The tanks are plumbed as in a model, on suction: a vented tank that nothing feeds takes in air, and a tank that is fed
 * (a header) takes in what it gives. So a header's level stands still until everything that feeds it is out of usable
 * liquid, and only then falls. Air that a header starts with stays in it: it is not topped up from its feeders.
 */
export function plumbing(tanks: readonly Tank[]): Plumbing | { readonly faults: readonly string[] } {
  const faults = plumbingFaults(tanks);
  if (faults.length > 0) return { faults };
  const outlet = groupsFeeding('outlet', tanks);
  return { tanks, outlet, usableMl: total(outlet) };
}

/** What a tank gives in all, ml: nothing when it starts below its unusable liquid. */
const ownUsableMl = (tank: Tank): number => Math.max(0, tank.startMl - tank.unusableMl);

const total = (list: readonly { readonly usableMl: number }[]): number =>
  list.reduce((sum, { usableMl }) => sum + usableMl, 0);

function groupsFeeding(target: string, tanks: readonly Tank[]): FeedGroup[] {
  const feeding = tanks.flatMap((tank, index) => (tank.feeds === target ? [{ tank, index }] : []));
  const ranks = [...new Set(feeding.map(({ tank }) => tank.rank))].sort((a, b) => a - b);
  return ranks.map((rank) => {
    const members = feeding.filter(({ tank }) => tank.rank === rank);
    const branches = members.map(({ tank, index }): FeedBranch => {
      const feeders = groupsFeeding(tank.id, tanks);
      const ofItself = ownUsableMl(tank);
      const fedMl = total(feeders);
      return { tank: index, feeders, ownUsableMl: ofItself, fedMl, usableMl: ofItself + fedMl };
    });
    return { share: members[0]!.tank.share, branches, usableMl: total(branches) };
  });
}

/**
 * What each tank holds, ml, in the order of `plumbing.tanks`, once the outlet has drawn `drawnMl`. Exact, continuous in
 * `drawnMl`, and what is gone from the tanks is what was drawn. Less than nothing counts as nothing, more than all that is
 * usable as all of it. `down` (aircraft frame) matters to tanks that share by level; it counts as having been so all along.
 */
export function tankVolumesAfter(plumbing: Plumbing, drawnMl: number, down: Vec3): number[] {
  if (Number.isNaN(drawnMl)) throw new RangeError('Fuel drawn: expected an amount in ml, got NaN.');
  const volumes = plumbing.tanks.map((tank) => tank.startMl);
  drain(plumbing, plumbing.outlet, Math.min(Math.max(0, drawnMl), plumbing.usableMl), down, volumes);
  return volumes;
}

function drain(
  plumbing: Plumbing,
  groups: readonly FeedGroup[],
  drawnMl: number,
  down: Vec3,
  volumes: number[],
): void {
  let left = drawnMl;
  for (const group of groups) {
    const take = Math.min(left, group.usableMl);
    if (take <= 0) continue;
    left -= take;
    if (group.share === 'level' && group.branches.length > 1) {
      const tanks = group.branches.map(({ tank }) => plumbing.tanks[tank]!);
      levelVolumes(tanks, take, down).forEach((ml, k) => {
        volumes[group.branches[k]!.tank] = ml;
      });
      continue;
    }
    for (const branch of group.branches) {
      const given = Math.min(branch.usableMl, (take * branch.usableMl) / group.usableMl);
      const fromFeeders = Math.min(given, branch.fedMl);
      drain(plumbing, branch.feeders, fromFeeders, down, volumes);
      volumes[branch.tank] = leftIn(plumbing.tanks[branch.tank]!, given - fromFeeders);
    }
  }
}

/** What a tank holds once it has given so much of its own, ml: never below what must stay behind, whatever the rounding. */
const leftIn = ({ startMl, unusableMl }: Tank, givenMl: number): number =>
  Math.max(startMl - givenMl, Math.min(startMl, unusableMl));

/** The liquid in every tank at each fraction of usable liquid left (1 full, 0 dry), with down in the aircraft's frame. */
export function fuelStates(plumbing: Plumbing, fractions: readonly number[], down: Vec3): LiquidState[][] {
  return fractions.map((fraction) => {
    const volumes = tankVolumesAfter(plumbing, (1 - fraction) * plumbing.usableMl, down);
    return plumbing.tanks.map((tank, i) => liquidState(tank, volumes[i]!, down));
  });
}
