import { type Carried, carriedFigure, carryOver, type Figure, type Refusal, refusal } from './figure';

/** A balance found on a stand, a knife edge or two fingertips, along one axis of the aircraft. */
export interface BalanceFound {
  /** Where the support stood, mm along the axis. */
  readonly supportMm: Figure;
  /** Grams laid on to bring it level there; left out where it balanced by itself. */
  readonly added?: { readonly massG: Figure; readonly atMm: Figure };
  /** The aircraft without the grams: needed when grams were added. */
  readonly massG?: Figure;
}

/** Where the CG is along that axis, mm. */
export interface BalancePoint {
  readonly ok: true;
  readonly cgMm: Figure;
  /** How far the CG stands from the support, mm; 0 without grams. */
  readonly fromSupportMm: number;
}

/**
 * The CG along one axis from a balance on a support at s with m grams at a: W·x + m·a = (W + m)·s, so
 *
 *     x = s + m·(s − a)/W
 *
 * Along the aircraft s and a are stations, across it buttlines (two supports on the plane of symmetry, grams at a tip).
 */
export function balancePoint({ supportMm, added, massG }: BalanceFound): BalancePoint | Refusal {
  if (!Number.isFinite(supportMm.value)) return refusal('The support: expected where it stood, in mm.');
  if (!added || (added.massG.value === 0 && !massG)) return { ok: true, cgMm: supportMm, fromSupportMm: 0 };
  if (!(added.massG.value >= 0)) {
    return refusal(`The grams added must be 0 g or more, not ${added.massG.value} g.`);
  }
  if (!massG || !(massG.value > 0))
    return refusal('With grams added, the mass of the whole aircraft is needed.');
  const carried = carryOver([supportMm, added.massG, added.atMm, massG], ([s = 0, m = 0, a = 0, w = 1]) => [
    s + (m * (s - a)) / w,
  ]);
  const cgMm = carriedFigure(carried, 0);
  return { ok: true, cgMm, fromSupportMm: cgMm.value - supportMm.value };
}

/** A line that the CG lies on, by two points of it, in two of the aircraft's axes, mm; one sigma for each coordinate. */
export interface CgLine {
  readonly throughMm: readonly [number, number];
  readonly andMm: readonly [number, number];
  readonly sigmaMm: number;
}

/** Where the lines cross. */
export interface LinesCrossing {
  readonly ok: true;
  readonly crossingMm: readonly [Figure, Figure];
  /** Of the two coordinates, plain covariances in mm². */
  readonly covariance: Carried['covariance'];
  /** How far the worst line passes it by, mm; 0 for two lines. */
  readonly worstMissMm: number;
}

/** Lines nearer to parallel than this, as the sine of the angle between them, cross nowhere that could be trusted. */
const LEAST_SINE = 0.05;

/**
 * The CG as the crossing of two lines or more, by least squares of the distances. Hung from a thread the CG lies on the plumb
 * line (station and waterline: hung by the spinner and by the tail); resting on two supports left and right it lies
 * on the line through them (station and buttline: the supports set askew one way, then the other).
 */
export function crossingOfLines(lines: readonly CgLine[]): LinesCrossing | Refusal {
  if (lines.length < 2) return refusal(`A crossing needs two lines or more, not ${lines.length}.`);
  const faulty = lines.findIndex((line) => !(lengthOf(line) > 0));
  if (faulty >= 0) return refusal(`Line ${faulty + 1}: expected two points apart from each other.`);
  if (widestSine(lines) < LEAST_SINE) {
    return refusal('The lines are as good as parallel: hang or support it another way for one of them.');
  }
  const inputs = lines.flatMap(({ throughMm, andMm, sigmaMm }) =>
    [...throughMm, ...andMm].map((value) => ({ value, sigma: sigmaMm })),
  );
  const carried = carryOver(inputs, leastSquaresCrossing);
  const [x = 0, z = 0] = carried.values;
  return {
    ok: true,
    crossingMm: [carriedFigure(carried, 0), carriedFigure(carried, 1)],
    covariance: carried.covariance,
    worstMissMm: Math.max(...lines.map((line) => missMm(line, x, z))),
  };
}

const lengthOf = ({ throughMm: [ax, az], andMm: [bx, bz] }: CgLine) => Math.hypot(bx - ax, bz - az);

function missMm(line: CgLine, x: number, z: number): number {
  const [ax, az] = line.throughMm;
  const [bx, bz] = line.andMm;
  return Math.abs((bx - ax) * (z - az) - (bz - az) * (x - ax)) / lengthOf(line);
}

function widestSine(lines: readonly CgLine[]): number {
  let widest = 0;
  for (const a of lines) {
    for (const b of lines) {
      const [ux, uz] = [a.andMm[0] - a.throughMm[0], a.andMm[1] - a.throughMm[1]];
      const [vx, vz] = [b.andMm[0] - b.throughMm[0], b.andMm[1] - b.throughMm[1]];
      widest = Math.max(widest, Math.abs(ux * vz - uz * vx) / lengthOf(a) / lengthOf(b));
    }
  }
  return widest;
}

/** Normal equations of Σ (n·(p − a))², n each line's unit normal. */
function leastSquaresCrossing(of: readonly number[]): readonly number[] {
  let [xx, xz, zz, bx, bz] = [0, 0, 0, 0, 0];
  for (let at = 0; at < of.length; at += 4) {
    const [ax, az, cx, cz] = of.slice(at, at + 4) as [number, number, number, number];
    const long = Math.hypot(cx - ax, cz - az);
    const [nx, nz] = [-(cz - az) / long, (cx - ax) / long];
    const off = nx * ax + nz * az;
    xx += nx * nx;
    xz += nx * nz;
    zz += nz * nz;
    bx += nx * off;
    bz += nz * off;
  }
  const det = xx * zz - xz * xz;
  return [(zz * bx - xz * bz) / det, (xx * bz - xz * bx) / det];
}
