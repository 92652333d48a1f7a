import { inLoadState, positionOf, switchesOf } from '../airframe/loadSwitches';
import type { Aircraft } from '../document/types';
import { formatMass, formatNumber, ownUnit, toOwnUnit } from '../units';
import { freshScales } from '../weigh/freshReadings';
import { predictedLoads } from '../weigh/predicted';
import { toWeigh } from '../weigh/toWeigh';
import { fineStation, lengthUp, type Say } from '../words/say';
import type { Balanced } from './balancing';
import { type Block, cell, columnsOf, heading, type Row, words, writeBox } from './blocks';
import { MARK_KEY, markLetters, massMark } from './massMark';
import { numbered } from './numbered';
import { bare } from './parts';

interface FormInput {
  readonly aircraft: Aircraft;
  readonly say: Say;
  readonly from: string;
  readonly balanced: Balanced;
  readonly wideMm: number;
}

/** A ± of a mass, rounded up to the step that masses are shown in. */
function plusMinusMass(g: number, { units }: Say): string {
  const step = units === 'metric' ? 1 : 0.01 / toOwnUnit(1, 'mass', units);
  return `± ${formatMass(Math.ceil(g / step - 1e-9) * step, units)}`;
}

/** The form for the scales, with what they should read by the list, and for the kitchen scale, part by part. */
export function weighBlocks(input: FormInput): readonly Block[] {
  const { balanced } = input;
  return [
    heading('Weigh-in'),
    words(
      `${balanced.words}, level. What is predicted comes from the list of parts; trust the scales before it.`,
    ),
    ...scalesBlocks(input),
    ...wholeBlocks(input),
    { kind: 'fill', labels: ['Weighed on', 'By', 'With which scales'] },
    ...partBlocks(input),
  ];
}

/** With the legs that it stands on: none that is up or not aboard. */
function onItsWheels(aircraft: Aircraft, { positions }: Balanced): Aircraft {
  const loaded = inLoadState(aircraft, positions);
  const legsUp = switchesOf(aircraft).some((each) => positionOf(each, positions).legsUp);
  const stands = (piece: Aircraft['structure'][number]) => piece.kind !== 'leg' || !piece.retract;
  return legsUp ? { ...loaded, structure: loaded.structure.filter(stands) } : loaded;
}

function scalesBlocks({ aircraft, say, balanced, wideMm }: FormInput): readonly Block[] {
  const reading = freshScales(onItsWheels(aircraft, balanced));
  if (reading.by !== 'scales') return [];
  const measured = reading.scales.some(({ supportMm }) => supportMm.some((mm) => mm !== 0));
  const loads = measured ? predictedLoads(reading.scales, balanced.balance, 0) : null;
  const length = ownUnit('length', say.units).symbol;
  const mass = ownUnit('mass', say.units).symbol;
  const rows: Row[] = reading.scales.map(({ name, supportMm }, at) => ({
    id: `scale ${at}`,
    cells: [
      cell(name),
      measured ? cell(bare(supportMm[0] - say.fromMm, say)) : writeBox,
      measured ? cell(bare(supportMm[1], say)) : writeBox,
      cell(loads?.[at] === undefined ? '–' : formatMass(loads[at], say.units, { unit: false })),
      writeBox,
      writeBox,
      writeBox,
    ],
  }));
  const isCounted = loads !== null;
  rows.push({
    id: 'sum',
    strong: true,
    cells: [
      cell('Together'),
      cell(''),
      cell(''),
      cell(isCounted ? formatMass(balanced.balance.massG, say.units, { unit: false }) : '–'),
      cell(''),
      cell(''),
      writeBox,
    ],
  });
  return [
    heading('On scales', 2),
    {
      kind: 'table',
      id: 'scales',
      roomy: true,
      columns: columnsOf(wideMm, [
        ['Support', 44],
        [`Station ${length}`, 22, 'right'],
        [`Buttline ${length}`, 22, 'right'],
        [`Should read ${mass}`, 24, 'right'],
        [`Reads ${mass}`, 24],
        [`Tare ${mass}`, 22],
        [`Net ${mass}`, 22],
      ]),
      rows,
    },
    words(
      `${isCounted ? '' : 'Where each scale should read what cannot be told from the list: there are no wheels down to stand on, or more than three supports. '}Station of the CG = sum of net × station, divided by the sum of net; the same with buttlines across.`,
      'note',
    ),
  ];
}

function wholeBlocks({ say, from, balanced, wideMm }: FormInput): readonly Block[] {
  const { balance, cgMm, plusMinusG, plusMinusMm } = balanced;
  const length = plusMinusMm === null ? '' : `± ${lengthUp(plusMinusMm, say)}`;
  const row = (id: string, label: string, figure: string, plusMinus: string): Row => ({
    id,
    cells: [cell(label), cell(figure), cell(plusMinus), writeBox],
  });
  const rows = [
    row(
      'mass',
      'Mass of the whole',
      say.mass(balance.massG),
      plusMinusG === null ? '' : plusMinusMass(plusMinusG, say),
    ),
    ...(cgMm
      ? [
          row('station', `CG along, from ${from}`, fineStation(cgMm[0], say), length),
          row('buttline', 'CG across, right +', fineStation(cgMm[1], { units: say.units, fromMm: 0 }), ''),
          row('stand', 'Balance stand, supports at', fineStation(cgMm[0], say), length),
        ]
      : []),
  ];
  return [
    heading('The whole aircraft', 2),
    {
      kind: 'table',
      id: 'whole',
      roomy: true,
      columns: columnsOf(wideMm, [
        ['', 70],
        ['Predicted', 34, 'right'],
        ['95 %', 30, 'right'],
        ['Measured', 46],
      ]),
      rows,
    },
  ];
}

function partBlocks({ aircraft, say, balanced, wideMm }: FormInput): readonly Block[] {
  const numbers = new Map(numbered(aircraft).map(({ id, number }) => [id, number]));
  const things = toWeigh(aircraft, balanced.balance);
  if (things.length === 0) return [];
  const mass = ownUnit('mass', say.units).symbol;
  return [
    heading('Part by part, what matters most first', 2),
    {
      kind: 'table',
      id: 'kitchen',
      roomy: true,
      columns: columnsOf(wideMm, [
        ['No.', 10, 'right'],
        ['Part', 66],
        [`Listed ${mass}`, 22, 'right'],
        ['From', 10, 'centre'],
        ['Its ± moves the CG by', 34, 'right'],
        [`Weighed ${mass}`, 40],
      ]),
      rows: things.map(({ id, name, massG, effectMm }) => ({
        id,
        cells: [
          cell(String(numbers.get(id) ?? '')),
          cell(name),
          cell(formatMass(massG, say.units, { unit: false })),
          cell(markLetters[massMark(aircraft, id)]),
          cell(Number.isFinite(effectMm) ? lengthUp(effectMm, say) : formatNumber(effectMm, 1)),
          writeBox,
        ],
      })),
    },
    words(MARK_KEY, 'note'),
  ];
}
