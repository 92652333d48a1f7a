import type { Vec3 } from '../geometry/types';
import { levelBreaks } from './levelShare';
import type { FeedGroup, Plumbing } from './plumbing';

/**
 * The amounts drawn at the outlet, ml, at which a tank begins or ceases to give: 0, the usable total and all between, in
 * increasing order. Between neighbours every tank's content is a smooth function of what is drawn, so an extreme of
 * anything that depends on it lies at one of these or where a derivative is zero.
 */
export function feedBreaks(plumbing: Plumbing, down: Vec3): number[] {
  const { usableMl } = plumbing;
  const inner = breaksOf(plumbing, plumbing.outlet, down).map((ml) => Math.min(Math.max(0, ml), usableMl));
  const all = [0, ...inner, usableMl];
  const apart = usableMl * 1e-12;
  return all.sort((a, b) => a - b).filter((ml, k) => k === 0 || ml - all[k - 1]! > apart);
}

function breaksOf(plumbing: Plumbing, groups: readonly FeedGroup[], down: Vec3): number[] {
  const breaks: number[] = [];
  let before = 0;
  for (const group of groups) {
    const breaksMl =
      group.share === 'level' && group.branches.length > 1
        ? levelBreaks(
            group.branches.map(({ tank }) => plumbing.tanks[tank]!),
            down,
          )
        : group.branches.flatMap((branch) => {
            const inner = [...breaksOf(plumbing, branch.feeders, down), branch.fedMl];
            return branch.usableMl > 0 ? inner.map((ml) => (ml * group.usableMl) / branch.usableMl) : [];
          });
    for (const ml of breaksMl) breaks.push(before + ml);
    before += group.usableMl;
    breaks.push(before);
  }
  return breaks;
}
