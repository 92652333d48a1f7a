import type { Vec3 } from '../../engine/geometry/types';
import type { Balance } from '../balance/balance';
import type { Aircraft } from '../document/types';
import { bandToKeep } from '../judgement/bandToKeep';
import { fineStation, lengthDown, lengthUp, type Say } from '../words/say';
import { statedForWords } from '../words/statedForWords';
import { ballastG } from '../words/verdict';
import { type Block, cell, columnsOf, heading, type Row, words } from './blocks';
import { numbered } from './numbered';
import { MOST_PACKS, type PackShift, packShifts, packsOf } from './packShifts';

interface PackInput {
  readonly aircraft: Aircraft;
  /** As shown on the bench, and its apparent down. */
  readonly shown: Balance;
  readonly down: Vec3;
  readonly say: Say;
  readonly wideMm: number;
}

function shiftCells(allowed: PackShift['allowed'], say: Say): readonly [string, string] {
  if (!allowed) return ['no place keeps it', 'no place keeps it'];
  const wayLeft = (mm: number, other: string) =>
    !Number.isFinite(mm) ? 'any' : mm < 0 ? `must go ${lengthUp(-mm, say)} ${other}` : lengthDown(mm, say);
  return [wayLeft(allowed.forwardMm, 'aft'), wayLeft(allowed.aftMm, 'forward')];
}

/** How far each pack may move, a row for each. */
export function packBlocks({ aircraft, shown, down, say, wideMm }: PackInput): readonly Block[] {
  const shifts = packShifts(aircraft, shown, down);
  if (shifts.length === 0) return [];
  const kept = bandToKeep(shown, aircraft);
  const packs = packsOf(aircraft);
  const left = packs.length - shifts.length;
  const paired = packs.some(({ item }) => item.twinId !== undefined);
  return [
    heading('How far each pack may move', 2),
    {
      kind: 'table',
      id: 'packs',
      columns: columnsOf(wideMm, [
        ['No.', 10, 'right'],
        ['Pack', 70],
        ['Mass', 24, 'right'],
        ['Forward', 38, 'right'],
        ['Aft', 38, 'right'],
      ]),
      rows: shifts.map(({ id, number, name, massG, allowed }) => {
        const [forward, aft] = shiftCells(allowed, say);
        return {
          id,
          cells: [cell(String(number)), cell(name), cell(say.mass(massG)), cell(forward), cell(aft)],
        };
      }),
    },
    words(
      `Before ${kept?.keptFor === 'limits' ? 'a limit' : 'a limit or the margin'} is left in any load state, everything else where it is, rounded down;${paired ? ' a mirrored pair moves together;' : ''} whether there is room for it is another question.${
        left > 0 ? ` ${left} more packs than ${MOST_PACKS} are not gone through.` : ''
      } ${statedForWords(aircraft)}`.trim(),
      'note',
    ),
  ];
}

/** What lead is aboard, and where more has room. */
export function ballastBlocks({
  aircraft,
  say,
  wideMm,
}: Pick<PackInput, 'aircraft' | 'say' | 'wideMm'>): readonly Block[] {
  const parts = numbered(aircraft).filter(({ item }) => 'role' in item && item.role === 'ballast');
  const spots = aircraft.ballastSpots ?? [];
  if (parts.length === 0 && spots.length === 0) return [heading('Ballast', 2), words('None aboard.')];
  const columns = columnsOf(wideMm, [
    ['Ballast', 90],
    ['Mass', 30, 'right'],
    ['Station', 60, 'right'],
  ]);
  const rows: Row[] = parts.map(({ id, name, massG, cgMm }) => ({
    id,
    cells: [cell(name), cell(say.mass(massG)), cell(fineStation(cgMm[0], say))],
  }));
  if (parts.length > 1)
    rows.push({
      id: 'all',
      strong: true,
      cells: [cell('Together'), cell(say.mass(ballastG(aircraft))), cell('')],
    });
  return [
    heading('Ballast', 2),
    ...(rows.length > 0 ? [{ kind: 'table', id: 'ballast', columns, rows } as const] : []),
    ...spots.map(({ name, mostG, positionMm }) =>
      words(
        `Room for up to ${say.mass(mostG)} at ${name}, station ${fineStation(positionMm[0], say)}.`,
        'note',
      ),
    ),
  ];
}
