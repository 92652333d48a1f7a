import { arrange } from '../../src/engine/place/arrange';
import { balanceRows, bindingRows } from '../../src/engine/place/balanceRows';
import { fullProgram } from '../../src/engine/place/fullProgram';
import { commonStepG } from '../../src/engine/place/goal';
import type { ArrangeAnswer } from '../../src/engine/place/searchState';
import { ballastForMargin } from '../../src/engine/place/tradeOff';
import type { PlaceProblem } from '../../src/engine/place/types';
import { bruteOfLines } from '../engine/place/bruteForce';
import { lineCase } from '../engine/place/cases';
import { arranged, byTheProcessor, cpuMs } from '../engine/place/solver';
import type { BenchRow } from './measure';

/** What came of a search, ms of the processor and g. */
interface Run {
  readonly firstMs: number;
  /** To the proof of the least ballast, or to the end without one. */
  readonly provedMs: number;
  readonly wholeMs: number;
  readonly gapG: number;
  readonly boundG: number;
  readonly ballastG: number;
}

function run(problem: PlaceProblem, limitMs: number): Run {
  const start = cpuMs();
  let [firstMs, provedMs] = [Number.NaN, Number.NaN];
  const told = ({ best, proved }: ArrangeAnswer) => {
    if (best && Number.isNaN(firstMs)) firstMs = cpuMs() - start;
    if (proved && Number.isNaN(provedMs)) provedMs = cpuMs() - start;
  };
  const answer = arranged(problem, limitMs, told, byTheProcessor);
  const wholeMs = cpuMs() - start;
  return {
    firstMs: Number.isNaN(firstMs) ? wholeMs : firstMs,
    provedMs: Number.isNaN(provedMs) ? wholeMs : provedMs,
    wholeMs,
    gapG: answer.gapG ?? NONE_G,
    boundG: answer.boundG,
    ballastG: answer.best?.ballastG ?? 0,
  };
}

/** Stands for no arrangement at all, g: more than any of these cases takes. */
const NONE_G = 1000;

interface Plain extends Pick<Run, 'provedMs' | 'gapG' | 'boundG'> {
  /** `NONE_G` without one. */
  readonly foundG: number;
}

/** The whole program handed to the solver as it is, with the same limit. */
function plainly(problem: PlaceProblem, limitMs: number): Plain {
  const start = cpuMs();
  const rows = bindingRows(balanceRows(problem), 'margin');
  const { program } = fullProgram(problem, { seek: 'least ballast' }, rows);
  const stepG = commonStepG(problem);
  const { values, bound } = byTheProcessor.solve(program, { timeMs: limitMs, gap: stepG * 0.999 });
  const boundG = Math.max(0, bound);
  const foundG = values && program.cost.reduce((sum, cost, i) => sum + cost * values[i]!, 0);
  return {
    provedMs: cpuMs() - start,
    gapG: foundG === null ? NONE_G : Math.max(0, foundG - Math.ceil(boundG / stepG - 1e-5) * stepG),
    boundG,
    foundG: foundG ?? NONE_G,
  };
}

const quantile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))]!;

/** A size of case, how long it may take, and what is asked of it; null where nothing is. */
interface Size {
  readonly parts: number;
  readonly bays: number;
  readonly limitMs: number;
  readonly cases: number;
  readonly firstMs: number | null;
  readonly provedMs: number | null;
  readonly gapG: number | null;
}

const sizes: readonly Size[] = [
  { parts: 8, bays: 4, limitMs: 20_000, cases: 9, firstMs: null, provedMs: 2000, gapG: null },
  { parts: 12, bays: 2, limitMs: 5000, cases: 8, firstMs: 300, provedMs: null, gapG: 2 },
  { parts: 12, bays: 4, limitMs: 5000, cases: 8, firstMs: 300, provedMs: null, gapG: 2 },
  { parts: 12, bays: 8, limitMs: 5000, cases: 8, firstMs: 300, provedMs: null, gapG: 2 },
  { parts: 16, bays: 4, limitMs: 20_000, cases: 3, firstMs: null, provedMs: null, gapG: 10 },
  { parts: 20, bays: 6, limitMs: 20_000, cases: 3, firstMs: 2000, provedMs: null, gapG: null },
  { parts: 30, bays: 8, limitMs: 20_000, cases: 3, firstMs: 2000, provedMs: null, gapG: null },
];

const row = (name: string, ours: number, theirs: number, unit: string, against: string): BenchRow => ({
  name,
  ours,
  theirs,
  unit,
  against,
  ratio: theirs / Math.max(ours, 1e-3),
});

const PLAIN = 'the whole program given to HiGHS, same limit';

/** More than this would be more ballast than the plain program's, g. */
const NO_WORSE_G = 0.5;

/** How long after being cancelled a search answers, ms of the processor. */
function cancelledMs(problem: PlaceProblem, afterMs: number): number {
  const start = cpuMs();
  const cancelled = () => cpuMs() - start > afterMs;
  arrange(problem, { ...byTheProcessor, timeMs: 20_000, cancelled });
  return Math.max(0, cpuMs() - start - afterMs);
}

/** When a search is cancelled, ms after it was begun: in its bound, in its exchanges, in its race. */
const CANCELLED_AFTER_MS = [100, 400, 900, 1600] as const;

/** Seeded cases of a size, only those where ballast is really needed, each by both ways. */
function rowsOf({ parts, bays, limitMs, cases, firstMs, provedMs, gapG }: Size): BenchRow[] {
  const ours: Run[] = [];
  const theirs: ReturnType<typeof plainly>[] = [];
  for (let seed = 1; ours.length < cases && seed < 4 * cases; seed++) {
    const problem = lineCase(seed, { parts, bays, hard: 6 });
    const found = run(problem, limitMs);
    if ((found.ballastG === 0 && found.gapG === 0) || found.boundG === Number.POSITIVE_INFINITY) continue;
    ours.push(found);
    theirs.push(plainly(problem, limitMs));
  }
  const name = `place ${parts} parts in ${bays} bays, ballast needed`;
  const of = <K extends keyof Run>(list: readonly Pick<Run, K>[], key: K) => list.map((one) => one[key]);
  const after = `after ${limitMs / 1000} s`;
  const rows: BenchRow[] = [];
  if (firstMs !== null) {
    const first = quantile(of(ours, 'firstMs'), 0.89);
    rows.push(row(`${name}: first answer, nine of ten`, first, firstMs, 'ms', 'stated limit'));
  }
  const [proof, plainProof] = [ours, theirs].map((list) => quantile(of(list, 'provedMs'), 0.5)) as [
    number,
    number,
  ];
  if (provedMs !== null)
    rows.push(row(`${name}: proof of least ballast, median`, proof, provedMs, 'ms', 'stated limit'));
  rows.push(row(`${name}: proof or the limit, median`, proof, plainProof, 'ms', PLAIN));
  // Case by case: what the plain program came to less than ours at the most, none of it when it is never better.
  const behindG = Math.max(
    0,
    ...ours.map(
      ({ ballastG, gapG: apartG }, i) => (apartG === NONE_G ? NONE_G : ballastG) - theirs[i]!.foundG,
    ),
  );
  rows.push(row(`${name}: ballast above the plain program's, the most`, behindG, NO_WORSE_G, 'g', PLAIN));
  const gap = quantile(of(ours, 'gapG'), 0.89);
  if (gapG !== null) rows.push(row(`${name}: gap ${after}, nine of ten`, gap, gapG, 'g', 'stated limit'));
  rows.push(row(`${name}: gap ${after}, nine of ten`, gap, quantile(of(theirs, 'gapG'), 0.89), 'g', PLAIN));
  // Of bounds more is better.
  const [bound, plainBound] = [ours, theirs].map((list) => quantile(of(list, 'boundG'), 0)) as [
    number,
    number,
  ];
  rows.push({
    ...row(`${name}: bound ${after}, the least`, bound, plainBound, 'g', PLAIN),
    ratio: bound / Math.max(plainBound, 1e-3),
  });
  return rows;
}

/** Placement where ballast is needed, in processor time. First answers come before the solver is asked, so warm or cold. */
export default async function placeBench(): Promise<BenchRow[]> {
  run(lineCase(1, { parts: 4, bays: 2, hard: 6 }), 1000);
  const rows: BenchRow[] = sizes.flatMap(rowsOf);
  const cancels = CANCELLED_AFTER_MS.map((ms) =>
    cancelledMs(lineCase(3, { parts: 30, bays: 8, hard: 6 }), ms),
  );
  rows.push(
    row(
      'place 30 parts in 8 bays: answer once cancelled, the latest',
      Math.max(...cancels),
      300,
      'ms',
      'stated limit',
    ),
  );
  const small = lineCase(3, { parts: 5, bays: 2, hard: 6, states: 2 });
  const [nose] = small.spots;
  const problem = { ...small, lateralMm: null, spots: [{ ...nose!, stepG: 1, mostG: 400 }] };
  const ours = run(problem, 30_000).wholeMs;
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
  ballastForMargin(lineCase(2, { parts: 8, bays: 4, hard: 6 }), 5, { ...byTheProcessor, timeMs: 60_000 });
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
