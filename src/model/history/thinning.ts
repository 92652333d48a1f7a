/** What is needed of a revision to say whether it stays. */
interface Dated {
  readonly atMs: number;
  readonly name: string | null;
}

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/** Of revisions so old only one stays in each stretch so long, ms. The first that is old enough holds. */
const STRETCHES = [
  { olderThanMs: 60 * DAY_MS, stretchMs: 30 * DAY_MS },
  { olderThanMs: 7 * DAY_MS, stretchMs: 7 * DAY_MS },
  { olderThanMs: DAY_MS, stretchMs: DAY_MS },
  { olderThanMs: 2 * HOUR_MS, stretchMs: HOUR_MS },
] as const;

/** The most that are kept by themselves, however close they lie. */
export const MOST_UNNAMED = 60;

/**
 * The revisions that stay: all with a name; of the others every one of the last two hours, then the latest of each
 * hour, day, week and month, and never more than `MOST_UNNAMED`. Latest first, as they are given.
 */
export function thinned<R extends Dated>(revisions: readonly R[], nowMs: number): readonly R[] {
  const taken = new Set<string>();
  let unnamed = 0;
  return revisions.filter(({ atMs, name }) => {
    if (name !== null) return true;
    const stretch = STRETCHES.find(({ olderThanMs }) => nowMs - atMs > olderThanMs);
    if (stretch) {
      const mark = `${stretch.stretchMs} ${Math.floor(atMs / stretch.stretchMs)}`;
      if (taken.has(mark)) return false;
      taken.add(mark);
    }
    unnamed += 1;
    return unnamed <= MOST_UNNAMED;
  });
}
