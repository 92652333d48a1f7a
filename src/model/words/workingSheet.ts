import type { Balance } from '../balance/balance';
import { shownText } from '../document/names';
import type { Aircraft } from '../document/types';
import { formatNumber, ownUnit, shownPlaces, type UnitSystem } from '../units';
import { calculatorFigures, calculatorSum } from './calculatorSum';
import { workingOf } from './working';

/** Which figure is opened into its sum. */
export type Figure = 'station' | 'buttline' | 'waterline' | 'mass' | 'margin';

/** A sum as it stands on paper: a table whose figures follow from the first two columns, then the last steps. */
export interface WorkingSheet {
  /** What the figure is and where it is measured from. */
  readonly says: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly total: readonly string[] | null;
  /** What is done with the totals, a line each; the last one ends in the figure as shown. */
  readonly steps: readonly string[];
}

/** The reference point that the person reads stations from. */
export interface From {
  readonly name: string;
  readonly mm: number;
}

const axes = { station: 0, buttline: 1, waterline: 2 } as const;

/** Writes out the sum behind a figure in the person's units; null where there is no such figure. */
export function workingSheet(
  figure: Figure,
  aircraft: Aircraft,
  balance: Balance,
  units: UnitSystem,
  from: From,
): WorkingSheet | null {
  if (!balance.cgMm) return null;
  if (figure === 'margin') return marginSheet(balance, units, from);
  const axis = figure === 'mass' ? 0 : axes[figure];
  const start = axis === 0 ? from : { name: axis === 1 ? 'the plane of symmetry' : 'the datum', mm: 0 };
  const working = workingOf(aircraft, balance, axis, start.mm);
  const mass = ownUnit('mass', units);
  const arm = ownUnit('length', units);
  const sum = calculatorSum(working, {
    gPerMass: mass.size,
    mmPerArm: arm.size,
    massPlaces: shownPlaces('mass', units),
    armPlaces: shownPlaces('length', units, true),
  });
  const { places } = sum;
  const ofMass = (value: number) => formatNumber(value, places.mass);
  if (figure === 'mass') {
    return {
      says: 'Everything aboard with the fuel shown, added up.',
      head: ['', `Mass, ${mass.symbol}`],
      rows: sum.lines.map((line) => [line.name, ofMass(line.mass)]),
      total: ['Total', ofMass(sum.mass)],
      steps: [`Mass = ${ofMass(sum.mass)} ${mass.symbol}`],
    };
  }
  const ofArm = (value: number) => formatNumber(value, places.arm);
  const ofMoment = (value: number) => formatNumber(value, places.mass + places.arm);
  const shown = formatNumber(sum.cg ?? 0, shownPlaces('length', units, true));
  return {
    says: `Mass × arm = moment for everything aboard, arms from ${start.name}${signs[figure]}.`,
    head: ['', `Mass, ${mass.symbol}`, `Arm, ${arm.symbol}`, `Moment, ${mass.symbol}·${arm.symbol}`],
    rows: sum.lines.map((line) => [line.name, ofMass(line.mass), ofArm(line.arm), ofMoment(line.moment)]),
    total: ['Total', ofMass(sum.mass), '', ofMoment(sum.moment)],
    steps: [
      'CG = total moment ÷ total mass',
      `${ofMoment(sum.moment)} ÷ ${ofMass(sum.mass)} = ${shown} ${arm.symbol}`,
    ],
  };
}

const signs = { station: ', aft +', buttline: ', right +', waterline: ', up +' } as const;

function marginSheet({ cgMm, estimate }: Balance, units: UnitSystem, from: From): WorkingSheet | null {
  if (!estimate || !cgMm) return null;
  const arm = ownUnit('length', units);
  const exact = [estimate.neutralPointMm - from.mm, cgMm[0] - from.mm, estimate.macMm].map(
    (mm) => mm / arm.size,
  );
  const { figures, places, result } = calculatorFigures(
    exact,
    ([np = 0, cg = 0, mac = 1]) => ((np - cg) / mac) * 100,
    { figures: shownPlaces('length', units, true), result: 1 },
  );
  const [np = '', cg = '', mac = ''] = figures.map((figure) => formatNumber(figure, places));
  const apart = formatNumber((figures[0] ?? 0) - (figures[1] ?? 0), places);
  return {
    says: `How far the CG lies ahead of the estimated neutral point, in % of the MAC. Stations from ${from.name}.`,
    head: ['', `Station, ${arm.symbol}`],
    rows: [
      ['Neutral point, estimated', np],
      ['CG', cg],
      ['Mean aerodynamic chord', mac],
    ],
    total: null,
    steps: [
      'Static margin = (neutral point − CG) ÷ MAC × 100',
      `(${np} − ${cg}) ÷ ${mac} × 100 = ${apart} ÷ ${mac} × 100 = ${formatNumber(result, 1)} % MAC`,
    ],
  };
}

/** The sum of one item's moment about the CG. */
export function momentSheet(
  name: string,
  massG: number,
  stationMm: number,
  cgStationMm: number,
  units: UnitSystem,
  from: From,
): WorkingSheet {
  const [mass, arm] = [ownUnit('mass', units), ownUnit('length', units)];
  const exact = [massG / mass.size, (stationMm - from.mm) / arm.size, (cgStationMm - from.mm) / arm.size];
  const { figures, places, result } = calculatorFigures(exact, ([m = 0, at = 0, cg = 0]) => m * (at - cg), {
    figures: shownPlaces('length', units, true),
    result: shownPlaces('length', units),
  });
  const [m = '', at = '', cg = ''] = figures.map((figure) => formatNumber(figure, places));
  const apart = formatNumber((figures[1] ?? 0) - (figures[2] ?? 0), places);
  const shown = formatNumber(result, shownPlaces('length', units), true);
  return {
    says: `What “${shownText(name)}” does to the beam: its mass × its arm from the CG. Stations from ${from.name}.`,
    head: ['', `${mass.symbol} and ${arm.symbol}`],
    rows: [
      ['Mass', m],
      ['Station of its CG', at],
      ['Station of the CG', cg],
    ],
    total: null,
    steps: [
      'Moment = mass × (station − CG), aft +',
      `${m} × (${at} − ${cg}) = ${m} × ${apart} = ${shown} ${mass.symbol}·${arm.symbol}`,
    ],
  };
}

/** The sheet as text in columns, for a clipboard. */
export function sheetText(title: string, { says, head, rows, total, steps }: WorkingSheet): string {
  const table = [head, ...rows, ...(total ? [total] : [])];
  const widths = head.map((_, column) => Math.max(...table.map((row) => row[column]?.length ?? 0)));
  const line = (row: readonly string[]) =>
    row
      .map((cell, column) =>
        column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0),
      )
      .join('  ')
      .trimEnd();
  const rule = '-'.repeat(widths.reduce((sum, width) => sum + width + 2, -2));
  const body = [line(head), rule, ...rows.map(line), ...(total ? [rule, line(total)] : [])];
  return `${[title, says, '', ...body, '', ...steps].join('\n')}\n`;
}
