import type { Vec3 } from '../engine/geometry/types';
import { stationToPctMac } from '../engine/wing/planform';
import type { Balance } from '../model/balance/balance';
import { shownText } from '../model/document/names';
import type { Aircraft } from '../model/document/types';
import { attitudeName, isLevel } from '../model/loads/attitude';
import { wingPlanform } from '../model/stability/band';
import { formatInertia, formatLength, formatMass, formatMoment, formatNumber, ownUnit } from '../model/units';
import { ballastG } from '../model/words/verdict';
import { balanceRows } from './balanceRows';
import type { TableOptions } from './tableOptions';
import { travelStrip } from './travelStrip';
import { verdictOf } from './verdictOf';

const WIDTH = 80;
const MARGIN = '  ';

/** The balance set as plain text, 80 columns: verdict, four figures, the sum line by line, the CG travel. */
export function balanceTable(aircraft: Aircraft, balance: Balance, options: TableOptions): string {
  const sections = [
    heading(aircraft, balance, options),
    sentences(aircraft, balance, options),
    figures(aircraft, balance, options),
    sum(aircraft, balance, options),
    inertia(balance),
    travelStrip(aircraft, balance, options),
  ];
  return `\n${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.map((line) => (MARGIN + line).trimEnd()).join('\n'))
    .join('\n\n')}\n\n`;
}

function heading(
  { name, datum }: Aircraft,
  { usableMl }: Balance,
  { from, fuelFraction, attitude }: TableOptions,
): readonly string[] {
  const origin = from ? `Places from ${shownText(from.name)}` : `Places from the datum: ${shownText(datum)}`;
  const fuel = usableMl > 0 ? `, ${formatNumber(fuelFraction * 100, 0)} % of what the tanks can give` : '';
  const held = isLevel(attitude) ? '' : ` Held so: ${attitudeName(attitude)}.`;
  return [shownText(name.toUpperCase()), ...wrapped(`${origin}${fuel}.${held}`)];
}

function sentences(aircraft: Aircraft, balance: Balance, options: TableOptions): readonly string[] {
  const { headline, cause, fix } = verdictOf(aircraft, balance, options);
  const remedy = fix ? `${fix.label}. ${fix.consequence}` : '';
  return [...wrapped(`${headline}.`), ...wrapped(cause), ...wrapped(remedy)];
}

function figures(aircraft: Aircraft, balance: Balance, { system, from }: TableOptions): readonly string[] {
  const { massG, cgMm, estimate, margin } = balance;
  const length = (mm: number, signed = false) => formatLength(mm, system, { fine: true, signed });
  const mac = wingPlanform(aircraft);
  const inMac = cgMm && mac ? `   ${formatNumber(stationToPctMac(mac, cgMm[0]), 1)} % MAC` : '';
  const cells: (readonly [string, string, string])[] = [
    ['ready to fly', formatMass(massG, system), ''],
    ['CG', cgMm ? length(cgMm[0] - (from?.positionMm[0] ?? 0)) : 'none', inMac],
    ['lateral', cgMm ? length(cgMm[1], true) : 'none', ''],
    ['ballast', formatMass(ballastG(aircraft), system), ''],
  ];
  const wide = Math.max(...cells.map(([, figure]) => figure.length));
  if (estimate) {
    const stationMm = estimate.neutralPointMm - (from?.positionMm[0] ?? 0);
    const note = `   ${formatNumber(estimate.pctMac, 1)} % MAC, an estimate`;
    cells.push(['neutral point', length(stationMm), note]);
  }
  if (margin) {
    const pct = (value: number) => `${formatNumber(value, 1)} % MAC`;
    const least = balance.travel.length > 1 ? `   at least ${pct(margin.leastPct)} over the burn` : '';
    cells.push(['static margin', pct(margin.nowPct), least]);
  }
  return cells.map(([name, figure, note]) => `${name.padEnd(14)}${figure.padStart(wide)}${note}`);
}

/** Name, mass, station, buttline, waterline, moment: the columns' widths. */
const COLUMNS = [24, 9, 10, 10, 11, 14] as const;

function sum(aircraft: Aircraft, balance: Balance, { system, from }: TableOptions): readonly string[] {
  const [x, y, z] = from?.positionMm ?? [0, 0, 0];
  const length = (mm: number) => formatLength(mm, system, { fine: true, unit: false });
  const figuresOf = (name: string, massG: number, cgMm: Vec3 | null) =>
    row([
      shownText(name),
      formatMass(massG, system, { fine: true, unit: false }),
      ...(cgMm
        ? [
            length(cgMm[0] - x),
            length(cgMm[1] - y),
            length(cgMm[2] - z),
            formatMoment(massG * (cgMm[0] - x), system, { unit: false }),
          ]
        : ['', '', '', '']),
    ]);
  const mass = ownUnit('mass', system).symbol;
  const mm = ownUnit('length', system).symbol;
  const rule = '─'.repeat(COLUMNS.reduce((total, width) => total + width, 0));
  return [
    row(['', 'mass', 'station', 'buttline', 'waterline', 'moment']),
    row(['', mass, mm, mm, mm, `${mass}·${mm}`]),
    rule,
    ...balanceRows(aircraft, balance).map(({ name, massG, cgMm }) => figuresOf(name, massG, cgMm)),
    rule,
    figuresOf('All', balance.massG, balance.cgMm),
  ];
}

function inertia({ cgMm, inertiaAboutCgGmm2: t }: Balance): readonly string[] {
  if (!cgMm) return [];
  const entries = (values: readonly (readonly [string, number])[]) =>
    values
      .map(([name, value]) => `${name} ${formatInertia(value, { unit: false }).padStart(9)}`)
      .join('    ');
  return [
    'Inertia about the CG, kg·m²; products are tensor elements, xy = −∫xy dm',
    entries([
      ['xx', t.xx],
      ['yy', t.yy],
      ['zz', t.zz],
    ]),
    entries([
      ['xy', t.xy],
      ['xz', t.xz],
      ['yz', t.yz],
    ]),
  ];
}

function row(cells: readonly string[]): string {
  return cells
    .map((cell, column) => {
      const width = COLUMNS[column] ?? 0;
      return column > 0
        ? cell.padStart(width)
        : (cell.length < width ? cell : `${cell.slice(0, width - 2)}…`).padEnd(width);
    })
    .join('');
}

function wrapped(text: string): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ').filter(Boolean)) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + word.length < WIDTH - MARGIN.length) {
      lines[lines.length - 1] = `${line} ${word}`;
    } else lines.push(word);
  }
  return lines;
}
