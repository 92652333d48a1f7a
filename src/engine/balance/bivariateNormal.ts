import { gaussRule } from '../mass/gauss';

/** Beyond so many sigmas less than 1e-16 is left. */
const SURE = 8.5;

/**
 * The standard normal distribution Φ(x), to about 1e-16; throws on NaN. By its Taylor series
 * Φ = 1/2 + φ(x)·(x + x³/3 + x⁵/(3·5) + …) (Marsaglia, Journal of Statistical Software 11(4), 2004;
 * Abramowitz & Stegun 26.2.11).
 */
export function normalBelow(x: number): number {
  if (Number.isNaN(x)) throw new RangeError('Normal distribution: expected a number of sigmas, got NaN.');
  if (Math.abs(x) > SURE) return x > 0 ? 1 : 0;
  let term = x;
  let sum = x;
  for (let k = 3, before = Number.NaN; sum !== before; k += 2) {
    before = sum;
    term *= (x * x) / k;
    sum += term;
  }
  const below = 0.5 + (sum * Math.exp((-x * x) / 2)) / Math.sqrt(2 * Math.PI);
  return Math.min(1, Math.max(0, below));
}

/**
 * P(X ≤ h and Y ≤ k) for standard normal X and Y of correlation `rho`, to about 1e-13. h and k may be infinite.
 * From ∂Φ₂/∂ρ = φ₂ (Plackett, Biometrika 41, 1954), with ρ = sin θ:
 *
 *     Φ₂(h, k, ρ) = Φ(h)·Φ(k) + 1/2π ∫₀^asin ρ exp(−(h² + k² − 2hk·sin θ)/(2·cos² θ)) dθ
 *
 * integrated by Gauss–Legendre with halving. The exponent is written so that nothing cancels near ρ = 1, and a negative ρ
 * is turned into a positive one by Φ₂(h, k, ρ) = Φ(h) − Φ₂(h, −k, −ρ).
 */
export function bivariateNormalBelow(h: number, k: number, rho: number): number {
  if (!(rho >= -1 && rho <= 1)) throw new RangeError(`Correlation: expected −1 to 1, got ${rho}.`);
  const [belowH, belowK] = [normalBelow(h), normalBelow(k)];
  if (Math.max(Math.abs(h), Math.abs(k)) > SURE || rho === 0) return belowH * belowK;
  if (rho < 0) return Math.max(0, belowH - bivariateNormalBelow(h, -k, -rho));
  // The angle is taken from the far end, ψ = π/2 − θ, where cos θ = sin ψ keeps its digits.
  const integrand = (psi: number) => {
    const apart = (h - k) / Math.sin(psi);
    return Math.exp(-(apart * apart) / 2 - (h * k) / (1 + Math.cos(psi)));
  };
  const added = integral(integrand, Math.acos(rho), Math.PI / 2) / (2 * Math.PI);
  return Math.min(belowH, belowK, Math.max(0, belowH * belowK + added));
}

const gauss = (f: (x: number) => number, from: number, to: number): number =>
  (to - from) * gaussRule(16).reduce((sum, { at, weight }) => sum + weight * f(from + at * (to - from)), 0);

/** The integral by halves until halving changes nothing that counts. */
function integral(f: (x: number) => number, from: number, to: number, whole = gauss(f, from, to)): number {
  const middle = (from + to) / 2;
  const [left, right] = [gauss(f, from, middle), gauss(f, middle, to)];
  if (Math.abs(left + right - whole) < 1e-14 || middle - from < 1e-12) return left + right;
  return integral(f, from, middle, left) + integral(f, middle, to, right);
}
