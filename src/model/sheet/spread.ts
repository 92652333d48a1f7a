/**
 * Sets things in a row apart: each as near as can be to where it would be (least squares), in the same order, none nearer to
 * the next than `gapMm`, all between `fromMm` and `toMm`. Isotonic regression by pooling adjacent violators (Barlow,
 * Bartholomew, Bremner and Brunk, 1972), cut to the bounds, which keeps it the best. Null where there is no room for all.
 */
export function spread(
  wantedMm: readonly number[],
  { gapMm, fromMm, toMm }: { readonly gapMm: number; readonly fromMm: number; readonly toMm: number },
): readonly number[] | null {
  const lastMm = toMm - (wantedMm.length - 1) * gapMm;
  if (lastMm < fromMm - 1e-9) return null;
  const pools: { sum: number; count: number }[] = [];
  for (const [at, mm] of wantedMm.entries()) {
    let pool = { sum: mm - at * gapMm, count: 1 };
    for (let before = pools.at(-1); before && meanOf(before) > meanOf(pool); before = pools.at(-1)) {
      pools.pop();
      pool = { sum: before.sum + pool.sum, count: before.count + pool.count };
    }
    pools.push(pool);
  }
  const level = pools.flatMap((pool) => Array<number>(pool.count).fill(meanOf(pool)));
  return level.map((mm, at) => Math.min(Math.max(mm, fromMm), Math.max(lastMm, fromMm)) + at * gapMm);
}

const meanOf = ({ sum, count }: { readonly sum: number; readonly count: number }) => sum / count;

/** How many fit a row. */
export const fitsRow = (fromMm: number, toMm: number, gapMm: number): number =>
  Math.max(0, Math.floor((toMm - fromMm) / gapMm + 1e-9) + 1);
