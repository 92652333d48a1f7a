import type { Vec3 } from '../geometry/types';
import { chiSquareAbove } from './chiSquare';
import {
  type CulpritKind,
  type Extent,
  type Forgotten,
  type Hypothesis,
  hypotheses,
  type Suspect,
} from './culpritHypotheses';
import { measurementsFault, mostLikely, quadratic, thoughtOf } from './reconcile';
import { choleskyOf } from './smallMatrix';
import { rowsOf, spreadOf, type ThoughtOf, type WholeMeasurement } from './wholeResiduals';

/** One slip that would explain the difference. */
export interface Culprit {
  readonly kind: CulpritKind;
  readonly id: string;
  readonly axis: 0 | 1 | 2 | null;
  /** What the entered figure is to be multiplied by; null where that is not what is wrong. */
  readonly factor: number | null;
  /** Its mass and place if this is what went wrong. */
  readonly massG: number;
  readonly positionMm: Vec3;
  /** How likely, of all that was thought of, "something else" among it; 0 to 1. */
  readonly probability: number;
  /** The chance of what would still differ: small where it does not explain it all. */
  readonly chanceLeft: number;
}

export interface CulpritRanking {
  /** Likeliest first; those that explain next to nothing are left out. */
  readonly culprits: readonly Culprit[];
  /** The first of them and all that are nearly as likely: more than one cannot be told apart by these measurements. */
  readonly alike: readonly Culprit[];
  /** How likely it is that none of them is it. */
  readonly somethingElse: number;
}

/** Less likely by this factor than the first, and it is told apart from it. */
const TOLD_APART = 3;
const LEAST_PROBABILITY = 0.005;
/** What leaves differences that chance makes more seldom than this explains nothing, however it stands against the others. */
const LEAST_CHANCE = 1e-3;
/** "Something else": any mass up to a few per cent of the whole, anywhere aboard. */
const ELSE_SHARE = 0.03;
const ELSE_WEIGHT = 0.5;

/**
 * What explains a weigh-in that does not agree, likeliest first. Each single slip is taken as a list of its own; how likely the measurements
 * are under it (normal, with everything's sigma, so that a slip with room to fit anything is held back by that room) times how common such
 * slips are, over the sum of all of them and of "something else". Two slips at once are not thought of.
 * @param withAll the items of a hypothesis with whatever else goes along with the item in question, as liquid with its tank
 */
export function rankCulprits(
  suspects: readonly Suspect[],
  measurements: readonly WholeMeasurement[],
  extent: Extent,
  forgotten: readonly Forgotten[] = [],
  withAll: (hypothesis: Hypothesis) => readonly ThoughtOf[] = ({ things }) => things,
): CulpritRanking {
  const thought = thoughtOf(suspects);
  if (measurementsFault(thought, measurements)) return { culprits: [], alike: [], somethingElse: 1 };
  const tried = hypotheses(suspects, thought, forgotten, extent)
    .map((hypothesis) => ({ ...hypothesis, things: withAll(hypothesis) }))
    .map((hypothesis) => ({
      hypothesis,
      ...likelihood(hypothesis.things, withForgotten(measurements, hypothesis)),
    }))
    .filter(({ chanceLeft }) => chanceLeft >= LEAST_CHANCE);
  const other = likelihood(withAnything(thought, extent), measurements);
  const logs = [
    Math.log(ELSE_WEIGHT) + other.log,
    ...tried.map(({ hypothesis, log }) => Math.log(hypothesis.weight) + log),
  ];
  const most = Math.max(...logs);
  const shares = logs.map((log) => Math.exp(log - most));
  const sum = shares.reduce((a, b) => a + b, 0);
  const culprits = tried
    .map(({ hypothesis, chanceLeft }, at) => ({ hypothesis, chanceLeft, probability: shares[at + 1]! / sum }))
    .filter(({ probability }) => probability >= LEAST_PROBABILITY)
    .sort((a, b) => b.probability - a.probability)
    .map(({ hypothesis, ...rest }) => culpritOf(hypothesis, withForgotten(measurements, hypothesis), rest));
  const first = culprits[0]?.probability ?? 0;
  return {
    culprits,
    alike: culprits.filter(({ probability }) => probability * TOLD_APART >= first),
    somethingElse: shares[0]! / sum,
  };
}

/** What was forgotten in the list was aboard when it was weighed. */
function withForgotten(
  measurements: readonly WholeMeasurement[],
  { kind, id }: Hypothesis,
): readonly WholeMeasurement[] {
  if (kind !== 'forgotten') return measurements;
  return measurements.map((each) =>
    each.aboard ? { ...each, aboard: new Set([...each.aboard, `forgotten ${id}`]) } : each,
  );
}

function withAnything(thought: readonly ThoughtOf[], { minMm, maxMm }: Extent): readonly ThoughtOf[] {
  const totalG = thought.reduce((sum, { massG }) => sum + massG, 0);
  const sigmaG = ELSE_SHARE * totalG;
  const middle = minMm.map((low, axis) => (low + maxMm[axis]!) / 2) as unknown as Vec3;
  const momentSigmaGmm = minMm.map(
    (low, axis) => (sigmaG * (maxMm[axis]! - low)) / Math.sqrt(12),
  ) as unknown as Vec3;
  return [
    ...thought,
    { id: 'something else', massG: 0, sigmaG, positionMm: middle, sigmaMm: [0, 0, 0], momentSigmaGmm },
  ];
}

/** log of how likely the measurements are, constants left out, and the chance of differences as large. */
function likelihood(things: readonly ThoughtOf[], measurements: readonly WholeMeasurement[]) {
  const present = measurements.map((each) =>
    each.aboard && things.some(({ id }) => id === 'something else')
      ? { ...each, aboard: new Set([...each.aboard, 'something else']) }
      : each,
  );
  const rows = rowsOf(things, present);
  const spread = choleskyOf(spreadOf(things, present, rows));
  if (!spread) return { log: Number.NEGATIVE_INFINITY, chanceLeft: 0 };
  const chiSquare = quadratic(spread, rows.left);
  return {
    log: -0.5 * (chiSquare + spread.logDeterminant),
    chanceLeft: chiSquareAbove(chiSquare, rows.left.length),
  };
}

function culpritOf(
  { kind, id, axis, factor, things }: Hypothesis,
  measurements: readonly WholeMeasurement[],
  rest: { readonly probability: number; readonly chanceLeft: number },
): Culprit {
  const name = kind === 'forgotten' ? `forgotten ${id}` : id;
  const free = kind === 'forgotten' || kind === 'not-weighed';
  const list = free ? mostLikely(things, measurements).thought : things;
  const found = list.find((thing) => thing.id === name)!;
  return { kind, id, axis, factor, massG: found.massG, positionMm: found.positionMm, ...rest };
}
