/** One line of `npm run bench -- --json`. `ratio` is theirs ÷ ours: above 1, ours is the faster. */
export interface BenchRow {
  readonly name: string;
  readonly ours: number;
  readonly theirs: number;
  readonly unit: string;
  /** What `theirs` is: a library, or a stated limit. */
  readonly against: string;
  readonly ratio: number;
}

interface Comparison {
  readonly name: string;
  readonly against: string;
  /** Returns something that depends on the work, so that the work cannot be optimised away. */
  readonly ours: () => unknown;
  readonly theirs: () => unknown;
  /** Turns given to each side; the median counts. */
  readonly batches?: number;
}

const batchMs = 8;
let lastResult: unknown;

/** Mean time of one call in ms, over `calls` calls. */
function timeCalls(work: () => unknown, calls: number): number {
  const start = performance.now();
  for (let i = 0; i < calls; i++) lastResult = work();
  return (performance.now() - start) / calls;
}

/** Runs the work warm and returns how many calls fill one batch. */
function callsPerBatch(work: () => unknown): number {
  let calls = 1;
  for (let warmMs = 0; warmMs < 10 * batchMs; ) {
    const callMs = timeCalls(work, calls);
    warmMs += callMs * calls;
    calls = Math.max(1, Math.min(calls * 4, Math.ceil(batchMs / Math.max(callMs, 1e-6))));
  }
  return calls;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** Median time of one call in ms, after a warm-up. */
export function medianMs(work: () => unknown, batches = 25): number {
  const calls = callsPerBatch(work);
  return median(Array.from({ length: batches }, () => timeCalls(work, calls)));
}

/**
 * Times ours and theirs turn by turn in the same run, so that a busy machine slows both alike.
 * Medians, in ms per call.
 */
export function compare({ name, against, ours, theirs, batches = 25 }: Comparison): BenchRow {
  const ourCalls = callsPerBatch(ours);
  const theirCalls = callsPerBatch(theirs);
  const ourTimes: number[] = [];
  const theirTimes: number[] = [];
  for (let i = 0; i < batches; i++) {
    ourTimes.push(timeCalls(ours, ourCalls));
    theirTimes.push(timeCalls(theirs, theirCalls));
  }
  if (lastResult === undefined) throw new Error(`${name}: the timed work must return its result.`);
  const [our, their] = [median(ourTimes), median(theirTimes)];
  return { name, ours: our, theirs: their, unit: 'ms', against, ratio: their / our };
}

/** Times ours against a stated limit in ms. */
export function againstLimit(name: string, ours: () => unknown, limitMs: number): BenchRow {
  const our = medianMs(ours);
  return { name, ours: our, theirs: limitMs, unit: 'ms', against: 'stated limit', ratio: limitMs / our };
}
