import { leadStates } from '../airframe/leads';
import { hullsAround, itemSolid } from '../airframe/solids';
import { plumbingOf } from '../balance/liquidTable';
import { listed } from '../document/inWords';
import type { Aircraft } from '../document/types';
import type { FittingOrder } from '../fit/fittingOrder';
import { itemForces } from '../fit/restraint';
import { formatLength, formatMass, formatNumber, formatVolume, ownUnit } from '../units';
import { manifestRows } from '../words/manifestRows';
import { lengthDown, lengthUp, type Say } from '../words/say';
import { type Block, cell, columnsOf, heading, type Row, words } from './blocks';
import { MARK_KEY, markLetters, massMark } from './massMark';
import { type Numbered, numbered } from './numbered';
import { surfaceAround } from './projection';

/** How far the search for the ways in has come. */
export type OrderSearch =
  | { readonly state: 'none' | 'searching' }
  | { readonly state: 'failed'; readonly sentence: string }
  | { readonly state: 'found'; readonly order: FittingOrder };

export const bare = (mm: number, { units }: Pick<Say, 'units'>): string =>
  formatLength(mm, units, { fine: true, unit: false });

/** What holds it: the bay that it must stay in, or the hull or surface that it stands in. */
export function standsIn(aircraft: Aircraft, { item }: Numbered): string {
  const bay = 'bayId' in item ? aircraft.bays?.find(({ id }) => id === item.bayId) : undefined;
  if (bay) return bay.name;
  if (item.inTheOpen) return 'in the open';
  const [hull] = hullsAround(aircraft, itemSolid(item));
  return hull?.name ?? surfaceAround(aircraft, item) ?? 'outside';
}

/** The hatch that it goes in through, as far as that was looked for. */
export function wayIn(aircraft: Aircraft, { id, inHull }: Numbered, search: OrderSearch): string {
  if (!inHull) return 'from outside';
  if ((aircraft.hatches ?? []).length === 0) return 'no hatch';
  if (search.state === 'searching') return 'being looked for';
  if (search.state !== 'found') return 'not looked for';
  const entry = search.order.order.find((each) => each.id === id);
  const hatch = aircraft.hatches?.find((each) => each.id === entry?.hatchId);
  return hatch ? hatch.name : 'none found';
}

/** "fed by No. 3": the pack, regulator or controller that its current comes from. */
function feedNote(aircraft: Aircraft, { item }: Numbered): string {
  const fedBy = ('power' in item && item.power?.fedBy) || [];
  const feeders = new Set(fedBy.map(({ from }) => from));
  const numbers = numbered(aircraft).flatMap(({ id, number }) => (feeders.has(id) ? [`No. ${number}`] : []));
  return numbers.length > 0 ? `fed by ${listed(numbers)}` : '';
}

/** What a tank starts a flight with, and what of it stays. */
function tankNote(aircraft: Aircraft, { id }: Numbered, { units }: Say): string {
  const tank = plumbingOf(aircraft)?.tanks.find((each) => each.id === id);
  if (!tank) return '';
  const unusable = tank.unusableMl > 0 ? `, ${formatVolume(tank.unusableMl, units)} unusable` : '';
  return `starts with ${formatVolume(tank.startMl, units)}${unusable}`;
}

/** The leads that end at it: needed and owned. */
function leadNotes(aircraft: Aircraft, { id }: Numbered, say: Say): string {
  const ends = new Map((aircraft.leads ?? []).map((lead) => [lead.id, lead]));
  return leadStates(aircraft)
    .filter((lead) => ends.get(lead.id)?.from === id || ends.get(lead.id)?.to === id)
    .map(({ name, neededMm, ownedMm }) => {
      const owned = ownedMm === null ? 'to be made' : `${say.length(ownedMm)} owned`;
      return `${name}: ${lengthUp(neededMm, say)} needed, ${owned}`;
    })
    .join('; ');
}

const force = (newtons: number) => formatNumber(Math.ceil(newtons - 1e-9), 0);

function partRow(aircraft: Aircraft, thing: Numbered, say: Say, search: OrderSearch): Row {
  const { number, id, name, massG, cgMm, item } = thing;
  const { ahead, up, side } = itemForces(aircraft, item);
  const notes = [
    tankNote(aircraft, thing, say),
    feedNote(aircraft, thing),
    leadNotes(aircraft, thing, say),
  ].filter(Boolean);
  return {
    id,
    cells: [
      cell(String(number)),
      cell(name, notes.join('; ')),
      cell(formatMass(massG, say.units, { unit: false })),
      cell(markLetters[massMark(aircraft, id)]),
      cell(bare(cgMm[0] - say.fromMm, say)),
      cell(bare(cgMm[1], say)),
      cell(bare(cgMm[2], say)),
      cell(standsIn(aircraft, thing)),
      cell([ahead, up, side].map(({ newtons }) => force(newtons)).join(' / ')),
      cell(wayIn(aircraft, thing, search)),
    ],
  };
}

/** Parts and tanks, then the airframe, then the leads. */
export function partsBlocks(
  aircraft: Aircraft,
  { say, wideMm, search }: { readonly say: Say; readonly wideMm: number; readonly search: OrderSearch },
): readonly Block[] {
  const things = numbered(aircraft);
  const length = ownUnit('length', say.units).symbol;
  const mass = ownUnit('mass', say.units).symbol;
  const factors = things[0] && itemForces(aircraft, things[0].item);
  const columns = columnsOf(wideMm, [
    ['No.', 8, 'right'],
    ['Part', 37],
    [`Mass ${mass}`, 13, 'right'],
    ['From', 9, 'centre'],
    [`Station ${length}`, 16, 'right'],
    [`Buttline ${length}`, 16, 'right'],
    [`Waterline ${length}`, 17, 'right'],
    ['Stands in', 24],
    ['Fixing holds N', 27, 'right'],
    ['Way in', 22],
  ]);
  if (things.length === 0) return [heading('Parts'), words('No part and no tank is aboard yet.')];
  return [
    heading('Parts and tanks'),
    {
      kind: 'table',
      id: 'parts',
      columns,
      rows: things.map((thing) => partRow(aircraft, thing, say, search)),
    },
    words(
      `Stations, buttlines and waterlines are those of each part’s own CG. A tank’s mass is that of the empty tank; a lead’s is reckoned from its length. ${MARK_KEY}`,
      'note',
    ),
    words(
      `Fixing holds: ahead / up / sideways, rounded up${
        factors
          ? `, at ${factors.loadFactors.ahead}, ${factors.loadFactors.up} and ${factors.loadFactors.side} g${
              factors.commonPractice ? ' (common practice, no source)' : ''
            }; a tank with what it starts with`
          : ''
      }.`,
      'note',
    ),
    ...airframeTable(aircraft, say, wideMm),
    ...leadTable(aircraft, say, wideMm),
  ];
}

function airframeTable(aircraft: Aircraft, say: Say, wideMm: number): readonly Block[] {
  const rows = manifestRows(aircraft).filter(
    ({ group }) => group !== 'tank' && group !== 'part' && group !== 'lead',
  );
  if (rows.length === 0) return [];
  const length = ownUnit('length', say.units).symbol;
  const columns = columnsOf(wideMm, [
    ['Piece', 76],
    [`Mass ${ownUnit('mass', say.units).symbol}`, 20, 'right'],
    ['From', 10, 'centre'],
    [`Station ${length}`, 22, 'right'],
    [`Buttline ${length}`, 22, 'right'],
    [`Waterline ${length}`, 24, 'right'],
    ['', 15],
  ]);
  const at = (cgMm: readonly number[] | null, axis: 0 | 1 | 2) =>
    cell(cgMm ? bare(cgMm[axis]! - (axis === 0 ? say.fromMm : 0), say) : '–');
  return [
    heading('Airframe', 2),
    {
      kind: 'table',
      id: 'airframe',
      columns,
      rows: rows.map(({ id, name, massG, cgMm, counted }) => ({
        id,
        cells: [
          cell(name),
          cell(formatMass(massG, say.units, { unit: false })),
          cell(markLetters[massMark(aircraft, id)]),
          at(cgMm, 0),
          at(cgMm, 1),
          at(cgMm, 2),
          cell(counted ? '' : 'not counted'),
        ],
      })),
    },
  ];
}

function leadTable(aircraft: Aircraft, say: Say, wideMm: number): readonly Block[] {
  const states = leadStates(aircraft);
  if (states.length === 0) return [];
  const numbers = new Map(numbered(aircraft).map(({ id, number, name }) => [id, `${number} ${name}`]));
  const ends = new Map((aircraft.leads ?? []).map((lead) => [lead.id, lead]));
  const columns = columnsOf(wideMm, [
    ['Lead', 40],
    ['From', 33],
    ['To', 33],
    [`Mass ${ownUnit('mass', say.units).symbol}`, 13, 'right'],
    [`Station ${ownUnit('length', say.units).symbol}`, 17, 'right'],
    ['Needed', 17, 'right'],
    ['Owned', 17, 'right'],
    ['To spare', 17, 'right'],
  ]);
  const bodies = new Map(manifestRows(aircraft).map((row) => [row.id, row]));
  const massCells = (id: string) => {
    const { massG = 0, cgMm = null } = bodies.get(id) ?? {};
    return [
      cell(massG > 0 ? formatMass(massG, say.units, { unit: false }) : '–'),
      cell(cgMm ? bare(cgMm[0] - say.fromMm, say) : '–'),
    ];
  };
  return [
    heading('Leads', 2),
    {
      kind: 'table',
      id: 'leads',
      columns,
      rows: states.map(({ id, name, neededMm, ownedMm, slackMm, strays }) => ({
        id,
        cells: [
          cell(name, strays ?? undefined),
          cell(numbers.get(ends.get(id)?.from ?? '') ?? ''),
          cell(numbers.get(ends.get(id)?.to ?? '') ?? ''),
          ...massCells(id),
          cell(lengthUp(neededMm, say)),
          cell(ownedMm === null ? 'to be made' : say.length(ownedMm)),
          cell(
            ownedMm === null
              ? ''
              : slackMm < 0
                ? `short by ${lengthUp(-slackMm, say)}`
                : lengthDown(slackMm, say),
          ),
        ],
      })),
    },
  ];
}
