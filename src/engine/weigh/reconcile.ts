import type { MeasuredBody } from '../balance/uncertainty';
import type { Vec3 } from '../geometry/types';
import { chiSquareAbove } from './chiSquare';
import { type Figure, type Refusal, refusal } from './figure';
import { type Cholesky, choleskyOf, choleskySolve } from './smallMatrix';
import {
  axisOfQuantity,
  type Rows,
  rowsOf,
  spreadOf,
  type ThoughtOf,
  variancesOf,
  type WholeMeasurement,
  type WholeQuantity,
} from './wholeResiduals';

/** One measured figure beside what the model makes of it, g or mm. */
export interface Difference {
  readonly measurementId: string;
  readonly quantity: WholeQuantity;
  readonly predicted: Figure;
  readonly measured: Figure;
  /** Measured less predicted, with the sigma of both. */
  readonly difference: Figure;
}

/** What one item is thought to be once the measurements have had their say. */
export interface Updated {
  readonly id: string;
  readonly massG: Figure;
  readonly positionMm: readonly [Figure, Figure, Figure];
  /** How far each moved from what was entered: g, then mm. */
  readonly movedG: number;
  readonly movedMm: Vec3;
}

export interface WholeFigures {
  readonly massG: Figure;
  readonly cgMm: readonly [Figure, Figure, Figure];
}

export interface Reconciled {
  readonly ok: true;
  readonly confidence: number;
  /** Whether the differences are within what chance makes of the stated errors at that confidence. */
  readonly agrees: boolean;
  /** Of all differences together, with as many degrees of freedom as figures were measured. */
  readonly chiSquare: number;
  readonly degrees: number;
  /** The chance of differences as large as these if every stated ± holds. */
  readonly chance: number;
  readonly differences: readonly Difference[];
  readonly updated: readonly Updated[];
  /** Everything as listed, before and after. */
  readonly before: WholeFigures;
  readonly after: WholeFigures;
}

/** Enough for what is nearly linear: each pass squares what is left. */
const PASSES = 6;

export const thoughtOf = (bodies: readonly MeasuredBody[]): readonly ThoughtOf[] =>
  bodies.flatMap(({ id, mass, sigmaG, sigmaMm }) =>
    mass.cgMm ? [{ id, massG: mass.massG, positionMm: mass.cgMm, sigmaG, sigmaMm }] : [],
  );

/**
 * Holds a list of items, each mass and coordinate with its own independent sigma, against measurements of the whole, and updates all of
 * them: weighted least squares, which for normal errors is Bayes' rule (Gelman et al., Bayesian Data Analysis, 14.8, from memory);
 * x̂ = x + P·Hᵀ·S⁻¹·ν, S = H·P·Hᵀ + R, iterated because moments are products. Agreement by νᵀS⁻¹ν against chi-square.
 * @param ofWhole which items the figures before and after are of; all when left out
 */
export function reconcile(
  bodies: readonly MeasuredBody[],
  measurements: readonly WholeMeasurement[],
  {
    confidence = 0.95,
    ofWhole,
  }: { readonly confidence?: number; readonly ofWhole?: ReadonlySet<string> } = {},
): Reconciled | Refusal {
  const things = thoughtOf(bodies);
  const sentence = measurementsFault(things, measurements);
  if (sentence) return refusal(sentence);
  const first = rowsOf(things, measurements);
  const spread = choleskyOf(spreadOf(things, measurements, first));
  if (!spread)
    return refusal(
      'Two of the measurements say the same without any error, so they cannot be weighed against each other.',
    );
  const chiSquare = quadratic(spread, first.left);
  const degrees = first.left.length;
  const chance = chiSquareAbove(chiSquare, degrees);
  const { thought, rows, factor } = mostLikely(things, measurements);
  const aboard = ofWhole ?? new Set(things.map(({ id }) => id));
  return {
    ok: true,
    confidence,
    agrees: chance >= 1 - confidence,
    chiSquare,
    degrees,
    chance,
    differences: differencesOf(things, measurements),
    updated: things.map((thing, at) => updatedThing(thing, thought[at]!, at, rows, factor)),
    before: wholeFigures(things, things, aboard, null, null),
    after: wholeFigures(things, thought, aboard, rows, factor),
  };
}

/** νᵀ·S⁻¹·ν. */
export const quadratic = (spread: Cholesky, left: readonly number[]): number =>
  choleskySolve(spread, left).reduce((sum, value, row) => sum + value * left[row]!, 0);

/** The likeliest masses and places, with the rows and their spread there. */
export function mostLikely(things: readonly ThoughtOf[], measurements: readonly WholeMeasurement[]) {
  let thought = things;
  let rows = rowsOf(things, measurements);
  let factor = choleskyOf(spreadOf(things, measurements, rows))!;
  for (let pass = 0; pass < PASSES; pass += 1) {
    // ν − H·(x₀ − x): what would be left at the start if the slopes were those of here.
    const left = rows.left.map((value, row) =>
      things.reduce(
        (sum, thing, at) => sum - along(rows.slopes[row]![at]!, offset(thing, thought[at]!)),
        value,
      ),
    );
    const pull = choleskySolve(factor, left);
    const slopes = rows.slopes;
    thought = things.map((thing, at) => pulled(thing, at, slopes, pull));
    rows = rowsOf(thought, measurements);
    const next = choleskyOf(spreadOf(thought, measurements, rows));
    if (!next) break;
    factor = next;
  }
  return { thought, rows, factor };
}

type Four = readonly [number, number, number, number];

const stateOf = ({ massG, positionMm }: ThoughtOf): Four => [massG, ...positionMm];

function offset(from: ThoughtOf, to: ThoughtOf): Four {
  const [a, b] = [stateOf(from), stateOf(to)];
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2], a[3] - b[3]];
}

const along = (a: Four, b: Four) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2] + a[3] * b[3];

function pulled(thing: ThoughtOf, at: number, slopes: Rows['slopes'], pull: readonly number[]): ThoughtOf {
  const variances = variancesOf(thing);
  const by = variances.map((variance, k) =>
    slopes.reduce((sum, row, index) => sum + variance * row[at]![k]! * pull[index]!, 0),
  ) as unknown as Four;
  const [x, y, z] = thing.positionMm;
  return { ...thing, massG: thing.massG + by[0], positionMm: [x + by[1], y + by[2], z + by[3]] };
}

function updatedThing(
  before: ThoughtOf,
  after: ThoughtOf,
  at: number,
  { slopes }: Rows,
  factor: Cholesky,
): Updated {
  const variances = variancesOf(before);
  const figure = (k: number): Figure => {
    const through = slopes.map((row) => row[at]![k]! * variances[k]!);
    return {
      value: stateOf(after)[k]!,
      sigma: Math.sqrt(Math.max(0, variances[k]! - quadratic(factor, through))),
    };
  };
  const [dm, dx, dy, dz] = offset(after, before);
  return {
    id: before.id,
    massG: figure(0),
    positionMm: [figure(1), figure(2), figure(3)],
    movedG: dm,
    movedMm: [dx, dy, dz],
  };
}

/** Mass and CG of some of the items, with what the measurements took off their variances. */
function wholeFigures(
  before: readonly ThoughtOf[],
  thought: readonly ThoughtOf[],
  aboard: ReadonlySet<string>,
  rows: Rows | null,
  factor: Cholesky | null,
): WholeFigures {
  const massG = thought.reduce((sum, thing) => sum + (aboard.has(thing.id) ? thing.massG : 0), 0);
  const cgOf = (axis: 0 | 1 | 2) =>
    thought.reduce(
      (sum, thing) => sum + (aboard.has(thing.id) ? thing.massG * thing.positionMm[axis] : 0),
      0,
    ) / massG;
  const figure = (value: number, slopeOf: (thing: ThoughtOf) => Four): Figure => {
    const slopes = thought.map((thing): Four => (aboard.has(thing.id) ? slopeOf(thing) : [0, 0, 0, 0]));
    const weighted = before.map(
      (thing, at) => variancesOf(thing).map((variance, k) => variance * slopes[at]![k]!) as unknown as Four,
    );
    let variance = weighted.reduce((sum, four, at) => sum + along(four, slopes[at]!), 0);
    if (rows && factor) {
      const through = rows.slopes.map((row) =>
        row.reduce((sum, four, at) => sum + along(four, weighted[at]!), 0),
      );
      variance -= quadratic(factor, through);
    }
    return { value, sigma: Math.sqrt(Math.max(0, variance)) };
  };
  const place = (axis: 0 | 1 | 2) => {
    const cg = cgOf(axis);
    return figure(cg, (thing) => {
      const slope: [number, number, number, number] = [(thing.positionMm[axis] - cg) / massG, 0, 0, 0];
      slope[axis + 1] = thing.massG / massG;
      return slope;
    });
  };
  return { massG: figure(massG, () => [1, 0, 0, 0]), cgMm: [place(0), place(1), place(2)] };
}

function differencesOf(
  things: readonly ThoughtOf[],
  measurements: readonly WholeMeasurement[],
): readonly Difference[] {
  return measurements.flatMap(({ id, quantities, values, covariance, aboard }) => {
    const whole = wholeFigures(
      things,
      things,
      aboard ?? new Set(things.map((thing) => thing.id)),
      null,
      null,
    );
    return quantities.map((quantity, at) => {
      const axis = axisOfQuantity(quantity);
      const predicted = axis === null ? whole.massG : whole.cgMm[axis];
      const measured = { value: values[at]!, sigma: Math.sqrt(covariance[at]![at]!) };
      return {
        measurementId: id,
        quantity,
        predicted,
        measured,
        difference: {
          value: measured.value - predicted.value,
          sigma: Math.hypot(measured.sigma, predicted.sigma),
        },
      };
    });
  });
}

/** Why there is nothing to hold against each other, or null. */
export function measurementsFault(
  things: readonly ThoughtOf[],
  measurements: readonly WholeMeasurement[],
): string | null {
  if (things.length === 0)
    return 'Nothing aboard has a mass yet, so there is nothing to hold the weigh-in against.';
  if (measurements.every(({ values }) => values.length === 0)) return 'Nothing has been measured yet.';
  for (const { id, quantities, values, covariance, aboard } of measurements) {
    if (quantities.length !== values.length || covariance.length !== values.length) {
      return `Weigh-in ${id}: expected as many figures as quantities.`;
    }
    if (!values.every(Number.isFinite)) return `Weigh-in ${id}: a measured figure is missing.`;
    if (aboard && !things.some((thing) => aboard.has(thing.id))) return `Weigh-in ${id}: nothing was aboard.`;
  }
  return null;
}
