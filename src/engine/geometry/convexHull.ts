import { type Corner, turnOf } from './polygon';

/**
 * The convex hull of points in a plane, counterclockwise, without corners on straight edges.
 * A. M. Andrew, Information Processing Letters 9(5), 1979.
 */
export function convexHull(points: readonly Corner[]): Corner[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Corner[]): Corner[] => {
    const chain: Corner[] = [];
    for (const p of list) {
      while (chain.length > 1 && turnOf(chain.at(-2)!, chain.at(-1)!, p) <= 1e-9) chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}
