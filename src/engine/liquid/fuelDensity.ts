/** kg/m³ at 15 °C: below it and above it the table has other constants. */
const KEROSENE_FROM = 787.5;
const KEROSENE_TO = 838.5;
const TRANSITION_FROM = 770.5;
const COLDEST_C = -20;
const HOTTEST_C = 60;

/**
 * Density of kerosene (jet fuel) at a temperature, g/ml, from its density at 15 °C, g/ml:
 * ρ = ρ₁₅ · exp(−α ΔT (1 + 0.8 α ΔT)), ΔT = T − 15 °C (ASTM D1250 / ISO 91-1, Table 54B), with
 * α = 594.5418 / ρ₁₅² for 787.5 to 838.5 kg/m³ and α = −0.00336312 + 2680.3206 / ρ₁₅² for 770.5 to 787.5 kg/m³.
 *
 * Throws for densities outside 0.7705 to 0.8385 g/ml, where other constants hold, and for temperatures outside
 * −20 to 60 °C, where a model's fuel does not get.
 */
export function densityAtTemperature(density15GPerMl: number, temperatureC: number): number {
  const rho = density15GPerMl * 1000;
  if (!(rho >= TRANSITION_FROM && rho <= KEROSENE_TO)) {
    throw new RangeError(
      `Fuel density: expected kerosene of ${TRANSITION_FROM / 1000} to ${KEROSENE_TO / 1000} g/ml at 15 °C, ` +
        `got ${density15GPerMl} g/ml.`,
    );
  }
  if (!(temperatureC >= COLDEST_C && temperatureC <= HOTTEST_C)) {
    throw new RangeError(
      `Fuel density: expected a temperature of ${COLDEST_C} to ${HOTTEST_C} °C, got ${temperatureC} °C.`,
    );
  }
  const alpha = rho >= KEROSENE_FROM ? 594.5418 / rho ** 2 : -0.00336312 + 2680.3206 / rho ** 2;
  const change = alpha * (temperatureC - 15);
  return density15GPerMl * Math.exp(-change * (1 + 0.8 * change));
}
