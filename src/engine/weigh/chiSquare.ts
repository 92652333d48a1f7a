import { normalBelow } from '../balance/bivariateNormal';

/**
 * The chance that chi-square with `degrees` degrees of freedom comes out above `value`, by the recurrence
 * Q(x, ν + 2) = Q(x, ν) + (x/2)^(ν/2)·e^(−x/2)/Γ(ν/2 + 1) (Abramowitz & Stegun 26.4.8), from Q(x, 1) = 2·Φ(−√x), Q(x, 2) = e^(−x/2).
 */
export function chiSquareAbove(value: number, degrees: number): number {
  if (!(value > 0)) return 1;
  const odd = degrees % 2 === 1;
  let above = odd ? 2 * normalBelow(-Math.sqrt(value)) : Math.exp(-value / 2);
  // (x/2)^(ν/2)·e^(−x/2)/Γ(ν/2 + 1), from Γ(3/2) = √π/2 and Γ(2) = 1.
  let term = Math.exp(-value / 2) * (odd ? Math.sqrt((2 * value) / Math.PI) : value / 2);
  for (let nu = odd ? 1 : 2; nu < degrees; nu += 2) {
    above += term;
    term *= value / (nu + 2);
  }
  return Math.min(1, above);
}
