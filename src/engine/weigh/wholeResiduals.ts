import type { Vec3 } from '../geometry/types';

/** What was measured of the whole aircraft. */
export type WholeQuantity = 'mass' | 'station' | 'buttline' | 'waterline';

/** One weighing of the whole, or of all that was aboard then. Aircraft frame, g and mm. */
export interface WholeMeasurement {
  readonly id: string;
  readonly quantities: readonly WholeQuantity[];
  readonly values: readonly number[];
  /** Plain covariance of the values. */
  readonly covariance: readonly (readonly number[])[];
  /** Ids of what was aboard; everything when left out. */
  readonly aboard?: ReadonlySet<string>;
}

/** Something aboard as it is thought to be: a point mass does, for only mass and CG of the whole are asked. */
export interface ThoughtOf {
  readonly id: string;
  readonly massG: number;
  readonly positionMm: Vec3;
  readonly sigmaG: number;
  readonly sigmaMm: Vec3;
  /** Sigmas of a moment of its own along each axis, g·mm: for something of which neither mass nor place is known. */
  readonly momentSigmaGmm?: Vec3;
}

const axisOf: Readonly<Record<Exclude<WholeQuantity, 'mass'>, 0 | 1 | 2>> = {
  station: 0,
  buttline: 1,
  waterline: 2,
};

export const axisOfQuantity = (quantity: WholeQuantity): 0 | 1 | 2 | null =>
  quantity === 'mass' ? null : axisOf[quantity];

/** Less error than this no measurement has, g and mm: it keeps the sums from dividing by nothing. */
const LEAST_SIGMA = 1e-7;

/**
 * Measurements against what is thought, as rows that are linear in each mass and in each place:
 *
 *     mass        Σ m − M = ε_M
 *     a place v   Σ m·(r − v) = −M·ε_v
 *
 * The moment is taken about the measured place, so nothing large cancels.
 */
export interface Rows {
  /** What is left of each row as thought: measured less thought, g or g·mm. */
  readonly left: readonly number[];
  /** Slopes by [mass, x, y, z] of each item: row, item, four figures. */
  readonly slopes: readonly (readonly (readonly [number, number, number, number])[])[];
  /** Of the rows' own errors. */
  readonly covariance: readonly (readonly number[])[];
}

export function rowsOf(things: readonly ThoughtOf[], measurements: readonly WholeMeasurement[]): Rows {
  const left: number[] = [];
  const slopes: [number, number, number, number][][] = [];
  const scales: number[] = [];
  for (const { quantities, values, aboard } of measurements) {
    const there = things.map(({ id }) => aboard?.has(id) ?? true);
    const totalG = things.reduce((sum, { massG }, at) => sum + (there[at] ? massG : 0), 0);
    quantities.forEach((quantity, at) => {
      const value = values[at]!;
      const axis = axisOfQuantity(quantity);
      const row = things.map(({ massG, positionMm }, thing): [number, number, number, number] => {
        if (!there[thing]) return [0, 0, 0, 0];
        if (axis === null) return [1, 0, 0, 0];
        const by: [number, number, number, number] = [positionMm[axis] - value, 0, 0, 0];
        by[axis + 1] = massG;
        return by;
      });
      slopes.push(row);
      left.push(
        axis === null
          ? value - totalG
          : -things.reduce((sum, { massG }, thing) => sum + row[thing]![0] * massG, 0),
      );
      scales.push(axis === null ? 1 : totalG);
    });
  }
  return { left, slopes, covariance: rowCovariance(measurements, scales) };
}

function rowCovariance(measurements: readonly WholeMeasurement[], scales: readonly number[]): number[][] {
  const all = scales.map(() => scales.map(() => 0));
  let first = 0;
  for (const { covariance, values } of measurements) {
    values.forEach((_, i) => {
      values.forEach((__, j) => {
        const least = i === j ? LEAST_SIGMA ** 2 : 0;
        all[first + i]![first + j] = (covariance[i]![j]! + least) * scales[first + i]! * scales[first + j]!;
      });
    });
    first += values.length;
  }
  return all;
}

/** The variances of what is thought of an item, as [mass, x, y, z]. */
export const variancesOf = ({ sigmaG, sigmaMm }: ThoughtOf): readonly [number, number, number, number] => [
  sigmaG ** 2,
  sigmaMm[0] ** 2,
  sigmaMm[1] ** 2,
  sigmaMm[2] ** 2,
];

/** H·P·Hᵀ + R: how far the rows may be off altogether. */
export function spreadOf(
  things: readonly ThoughtOf[],
  measurements: readonly WholeMeasurement[],
  { slopes, covariance }: Rows,
): number[][] {
  const spread = covariance.map((row) => [...row]);
  const rowAxes = measurements.flatMap(({ quantities }) => quantities.map(axisOfQuantity));
  const rowAboard = measurements.flatMap(({ quantities, aboard }) => quantities.map(() => aboard));
  things.forEach((thing, at) => {
    const variances = variancesOf(thing);
    slopes.forEach((a, i) => {
      slopes.forEach((b, j) => {
        for (let k = 0; k < 4; k += 1) spread[i]![j]! += a[at]![k]! * b[at]![k]! * variances[k]!;
        const axis = rowAxes[i];
        const both = [rowAboard[i], rowAboard[j]].every((aboard) => aboard?.has(thing.id) ?? true);
        if (thing.momentSigmaGmm && axis != null && axis === rowAxes[j] && both) {
          spread[i]![j]! += thing.momentSigmaGmm[axis] ** 2;
        }
      });
    });
  });
  return spread;
}
