import type { ArrangeAnswer } from '../../src/engine/place/searchState';
import { ballastForMargin } from '../../src/engine/place/tradeOff';
import type { PlaceProblem } from '../../src/engine/place/types';
import { bruteOfLines } from '../engine/place/bruteForce';
import { lineCase } from '../engine/place/cases';
import { arranged, byTheClock } from '../engine/place/solver';
import type { BenchRow } from './measure';

/** Processor time of this process, ms: what the work takes, however busy the machine is. */
const cpuMs = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

interface Run {
  readonly firstMs: number;
  /** To the proof of the least ballast, or to the end without one. */
  readonly provedMs: number;
  readonly wholeMs: number;
  readonly gapG: number;
  readonly ballastG: number;
}

function run(problem: PlaceProblem): Run {
  const start = cpuMs();
  let firstMs = Number.NaN;
  let provedMs = Number.NaN;
  const told = ({ best, proved }: ArrangeAnswer) => {
    if (best && Number.isNaN(firstMs)) firstMs = cpuMs() - start;
    if (proved && Number.isNaN(provedMs)) provedMs = cpuMs() - start;
  };
  const answer = arranged(problem, 30_000, told, byTheClock);
  const wholeMs = cpuMs() - start;
  return {
    firstMs: Number.isNaN(firstMs) ? wholeMs : firstMs,
    provedMs: Number.isNaN(provedMs) ? wholeMs : provedMs,
    wholeMs,
    gapG: answer.gapG ?? Number.POSITIVE_INFINITY,
    ballastG: answer.best?.ballastG ?? 0,
  };
}

const quantile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))]!;

/** Seeded cases of a size, but only those where ballast is really needed. */
function runsOf(parts: number, bays: number, wanted: number): Run[] {
  const found: Run[] = [];
  for (let seed = 1; found.length < wanted && seed < 4 * wanted; seed++) {
    const one = run(lineCase(seed, { parts, bays, hard: 6 }));
    if (one.ballastG > 0) found.push(one);
  }
  return found;
}

const row = (name: string, ours: number, theirs: number, unit: string, against: string): BenchRow => ({
  name,
  ours,
  theirs,
  unit,
  against,
  ratio: theirs / Math.max(ours, 1e-3),
});

/** Placement where ballast is needed, in processor time. */
export default async function placeBench(): Promise<BenchRow[]> {
  run(lineCase(1, { parts: 4, bays: 2, hard: 6 }));
  const rows: BenchRow[] = [];
  for (const [parts, bays, wanted] of [
    [4, 2, 9],
    [6, 3, 9],
    [8, 4, 11],
    [10, 4, 7],
    [12, 4, 10],
  ] as const) {
    const runs = runsOf(parts, bays, wanted);
    const of = (key: keyof Run) => runs.map((one) => one[key]);
    const name = `place ${parts} parts in ${bays} bays, ballast needed`;
    rows.push(
      row(
        `${name}: proof of least ballast, median`,
        quantile(of('provedMs'), 0.5),
        5000,
        'ms',
        'stated limit',
      ),
    );
    if (parts < 12) continue;
    rows.push(row(`${name}: first answer, median`, quantile(of('firstMs'), 0.5), 300, 'ms', 'stated limit'));
    rows.push(
      row(`${name}: first answer, nine of ten`, quantile(of('firstMs'), 0.89), 300, 'ms', 'stated limit'),
    );
    rows.push(
      row(
        `${name}: proof of least ballast, nine of ten`,
        quantile(of('provedMs'), 0.89),
        10_000,
        'ms',
        'stated limit',
      ),
    );
    rows.push(
      row(`${name}: gap after that, nine of ten`, quantile(of('gapG'), 0.89), 2, 'g', 'stated limit'),
    );
    rows.push(
      row(
        `${name}: margin and moves as well, median`,
        quantile(of('wholeMs'), 0.5),
        10_000,
        'ms',
        'stated limit',
      ),
    );
  }
  const small = lineCase(3, { parts: 5, bays: 2, hard: 6, states: 2 });
  const [nose] = small.spots;
  const problem = { ...small, lateralMm: null, spots: [{ ...nose!, stepG: 1, mostG: 400 }] };
  const ours = run(problem).wholeMs;
  const start = cpuMs();
  const brute = bruteOfLines(problem);
  const theirs = cpuMs() - start;
  if (!brute) throw new Error('The small case must have a solution.');
  rows.push(
    row(
      'place 5 parts in 2 bays: least ballast and margin',
      ours,
      theirs,
      'ms',
      'brute force over bays, orders and grams',
    ),
  );
  const curveStart = cpuMs();
  ballastForMargin(lineCase(2, { parts: 8, bays: 4, hard: 6 }), 5, {
    ...byTheClock,
    timeMs: 60_000,
  });
  rows.push(
    row(
      'place 8 parts: five points of ballast against margin',
      cpuMs() - curveStart,
      10_000,
      'ms',
      'stated limit',
    ),
  );
  return rows;
}
