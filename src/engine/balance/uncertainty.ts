import type { Vec3 } from '../geometry/types';
import { massSum } from '../mass/massProperties';
import type { MassProperties, Tensor } from '../mass/types';

/**
 * How well the balance is known. Each mass and each coordinate carries an independent standard uncertainty; they are
 * carried over to the results by first-order propagation, u²(y) = Σ (∂y/∂x_i)²·u²(x_i) (JCGM 100:2008, GUM, equation 10;
 * for several results at once, U_y = J·U_x·Jᵀ, JCGM 102:2011, 6.2.1). It leaves out terms of the order of the square of a
 * mass's share of error, and errors that measurements have in common, such as scales that read high.
 */

/** The coverage factor of an entered ±: it stands for two standard uncertainties, about 95 % (GUM 6.2.1 and 6.3.3). */
export const COVERAGE_FACTOR = 2;

/** The standard uncertainty, one sigma, that an entered ± stands for: half of it. Any unit. */
export const standardUncertainty = (plusMinus: number): number => plusMinus / COVERAGE_FACTOR;

/** A body with the standard uncertainties (one sigma) of its mass and of its CG along each axis. */
export interface MeasuredBody {
  readonly id: string;
  readonly mass: MassProperties;
  readonly sigmaG: number;
  readonly sigmaMm: Vec3;
}

/** What one measurement adds to the variance of the CG along each axis, mm². */
export interface Contribution {
  readonly bodyId: string;
  readonly quantity: 'mass' | 'position';
  readonly varianceMm2: Vec3;
}

/** Mass properties with standard uncertainties (one sigma), aircraft frame. */
export interface Uncertainty {
  readonly mass: MassProperties;
  readonly massSigmaG: number;
  readonly cgSigmaMm: Vec3;
  /** Covariance of the CG's coordinates, mm²; xy and so on are plain covariances, unlike an inertia's. */
  readonly cgCovarianceMm2: Tensor;
  /** Of the CG's buttline, mm. */
  readonly lateralSigmaMm: number;
  /** Of Ixx, Iyy, Izz about the CG, g·mm². */
  readonly inertiaSigmaGmm2: Vec3;
  /** Two for each body; along each axis they sum to the variance of the CG. */
  readonly contributions: readonly Contribution[];
}

/**
 * Carries the uncertainties of all the bodies over to the whole. With M the total and c its CG,
 *
 *     ∂c/∂m_i = (r_i − c)/M          ∂c/∂r_i = m_i/M
 *     ∂Ixx/∂m_i = Ixx_i/m_i + y² + z²   ∂Ixx/∂y_i = 2·m_i·y   ∂Ixx/∂z_i = 2·m_i·z   (x, y, z from c)
 *
 * The last hold although c moves, for Σ m·(r − c) = 0. A body weighed heavier is taken as so much denser all over.
 * Null for no mass; a body of no mass has no place and so no say.
 */
export function propagate(bodies: readonly MeasuredBody[]): Uncertainty | null {
  const mass = massSum(bodies.map((body) => body.mass));
  if (mass.cgMm === null) return null;
  const contributions: Contribution[] = [];
  let massVariance = 0;
  const inertiaVariance: [number, number, number] = [0, 0, 0];
  const covariance = { xx: 0, yy: 0, zz: 0, xy: 0, xz: 0, yz: 0 };
  for (const { id, mass: bodyMass, sigmaG, sigmaMm } of bodies) {
    if (bodyMass.cgMm === null) continue;
    massVariance += sigmaG ** 2;
    const perG = cgPerG(bodyMass.cgMm, mass.massG, mass.cgMm);
    const perMm = cgPerMm(bodyMass.massG, mass.massG);
    const [mx, my, mz] = perG.map((slope) => slope * sigmaG) as [number, number, number];
    const [px, py, pz] = sigmaMm.map((sigma) => perMm * sigma) as [number, number, number];
    contributions.push(
      { bodyId: id, quantity: 'mass', varianceMm2: [mx * mx, my * my, mz * mz] },
      { bodyId: id, quantity: 'position', varianceMm2: [px * px, py * py, pz * pz] },
    );
    covariance.xx += mx * mx + px * px;
    covariance.yy += my * my + py * py;
    covariance.zz += mz * mz + pz * pz;
    covariance.xy += mx * my;
    covariance.xz += mx * mz;
    covariance.yz += my * mz;
    inertiaVariances(bodyMass, mass.cgMm, sigmaG, sigmaMm).forEach((variance, axis) => {
      inertiaVariance[axis]! += variance;
    });
  }
  const cgSigmaMm: Vec3 = [Math.sqrt(covariance.xx), Math.sqrt(covariance.yy), Math.sqrt(covariance.zz)];
  return {
    mass,
    massSigmaG: Math.sqrt(massVariance),
    cgSigmaMm,
    cgCovarianceMm2: covariance,
    lateralSigmaMm: cgSigmaMm[1],
    inertiaSigmaGmm2: [
      Math.sqrt(inertiaVariance[0]),
      Math.sqrt(inertiaVariance[1]),
      Math.sqrt(inertiaVariance[2]),
    ],
    contributions,
  };
}

/** How the CG moves with a body's mass, mm per g: (r − c)/M. */
export const cgPerG = (bodyMm: Vec3, totalG: number, cgMm: Vec3): Vec3 => [
  (bodyMm[0] - cgMm[0]) / totalG,
  (bodyMm[1] - cgMm[1]) / totalG,
  (bodyMm[2] - cgMm[2]) / totalG,
];

/** How the CG moves with a body, mm per mm: m/M. */
export const cgPerMm = (bodyG: number, totalG: number): number => bodyG / totalG;

/** What one body adds to the variances of Ixx, Iyy, Izz, (g·mm²)². */
function inertiaVariances(
  { massG, cgMm, inertiaAboutCgGmm2: { xx, yy, zz } }: MassProperties,
  aboutMm: Vec3,
  sigmaG: number,
  [sx, sy, sz]: Vec3,
): Vec3 {
  const [x, y, z] = [cgMm![0] - aboutMm[0], cgMm![1] - aboutMm[1], cgMm![2] - aboutMm[2]];
  const ofMass = (inertia: number, a: number, b: number) => ((inertia / massG + a * a + b * b) * sigmaG) ** 2;
  const [ofX, ofY, ofZ] = [(2 * massG * x * sx) ** 2, (2 * massG * y * sy) ** 2, (2 * massG * z * sz) ** 2];
  return [ofMass(xx, y, z) + ofY + ofZ, ofMass(yy, x, z) + ofX + ofZ, ofMass(zz, x, y) + ofX + ofY];
}
