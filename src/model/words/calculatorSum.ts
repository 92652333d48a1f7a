import type { Working } from './working';

/**
 * The sum as it is written down for a pocket calculator: masses and arms rounded, and everything after that worked
 * out from the rounded figures. All figures are in the person's units; `places` are decimals.
 */
export interface CalculatorSum {
  readonly lines: readonly CalculatorLine[];
  readonly mass: number;
  readonly moment: number;
  /** moment ÷ mass; null without mass. */
  readonly cg: number | null;
  readonly places: { readonly mass: number; readonly arm: number };
}

export interface CalculatorLine {
  readonly name: string;
  readonly mass: number;
  readonly arm: number;
  readonly moment: number;
}

/** What one unit of the person's is in the file's, and the decimals of the figures on screen. */
export interface SumUnits {
  readonly gPerMass: number;
  readonly mmPerArm: number;
  readonly massPlaces: number;
  readonly armPlaces: number;
}

/** Decimals more than on screen that are tried before the sum is given up as it is. */
const MOST_EXTRA = 5;

/**
 * Rounds the lines to the fewest decimals with which a person who follows the sum gets the very figures on screen,
 * mass and CG. Products and sums are exact: they are worked out in whole numbers of the last decimal.
 */
export function calculatorSum(working: Working, units: SumUnits): CalculatorSum {
  const readsAs = (a: number, b: number, places: number) => asShown(a, places) === asShown(b, places);
  const cg = (working.cgMm ?? 0) / units.mmPerArm;
  let sum = roundedSum(working, units, 0, 0);
  for (let extra = 0; extra <= 2 * MOST_EXTRA; extra++) {
    for (let ofMass = Math.min(extra, MOST_EXTRA); ofMass >= Math.max(0, extra - MOST_EXTRA); ofMass--) {
      sum = roundedSum(working, units, ofMass, extra - ofMass);
      const sameMass = readsAs(sum.mass, working.massG / units.gPerMass, units.massPlaces);
      const same = sum.cg === null ? working.cgMm === null : readsAs(sum.cg, cg, units.armPlaces);
      if (sameMass && same) return sum;
    }
  }
  return sum;
}

function roundedSum(working: Working, units: SumUnits, ofMass: number, ofArm: number): CalculatorSum {
  const places = { mass: units.massPlaces + ofMass, arm: units.armPlaces + ofArm };
  const [inMass, inArm] = [10 ** places.mass, 10 ** places.arm];
  let [massTotal, momentTotal] = [0, 0];
  const lines = working.lines.map(({ name, massG, armMm }) => {
    const mass = Math.round((massG / units.gPerMass) * inMass);
    const arm = Math.round((armMm / units.mmPerArm) * inArm);
    massTotal += mass;
    momentTotal += mass * arm;
    return { name, mass: mass / inMass, arm: arm / inArm, moment: (mass * arm) / (inMass * inArm) };
  });
  return {
    lines,
    mass: massTotal / inMass,
    moment: momentTotal / (inMass * inArm),
    cg: massTotal > 0 ? momentTotal / massTotal / inArm : null,
    places,
  };
}

/** A figure as it reads on screen, where nothing has no sign. */
const asShown = (figure: number, places: number) => Number(figure.toFixed(places));

/**
 * A few figures rounded to the fewest decimals, the same for all, with which a formula still gives the very figure
 * on screen. `places` are the decimals of the figures to begin with and of the result.
 */
export function calculatorFigures(
  figures: readonly number[],
  formula: (figures: readonly number[]) => number,
  places: { readonly figures: number; readonly result: number },
): { readonly figures: readonly number[]; readonly places: number; readonly result: number } {
  const shown = asShown(formula(figures), places.result);
  for (let extra = 0; ; extra++) {
    const rounded = figures.map((figure) => Number(figure.toFixed(places.figures + extra)));
    const result = formula(rounded);
    if (asShown(result, places.result) === shown || extra > MOST_EXTRA) {
      return { figures: rounded, places: places.figures + extra, result };
    }
  }
}
