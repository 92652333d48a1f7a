import type { Vec3 } from '../../engine/geometry/types';
import { stepsDown, stepsUp } from '../../engine/geometry/wholeSteps';
import type { Balance } from '../balance/balance';
import { midSentence } from '../document/inWords';
import type { Aircraft } from '../document/types';
import { bandToKeep } from '../judgement/bandToKeep';
import type { CgPoint, Judgement, StateJudgement } from '../judgement/types';
import { ownUnit } from '../units';
import { headAndCause, marginFigure } from '../words/headline';
import { fineStation, lengthDown, lengthUp, type Say } from '../words/say';
import { ballastG } from '../words/verdict';
import { type ShownMass, verdictFacts } from '../words/verdictFacts';
import { type Balanced, isKept, type KeepBetween, stateWords } from './balancing';
import { type Block, cell, columnsOf, drawn, heading, type Row, words } from './blocks';
import type { StripPlace } from './cgStrips';
import { numbered } from './numbered';
import { MOST_PACKS, type PackShift, packShifts, packsOf } from './packShifts';
import { bare } from './parts';
import { travelChart } from './travelChart';

export interface CgPageInput {
  readonly aircraft: Aircraft;
  readonly shown: Balance;
  readonly judgement: Judgement;
  readonly say: Say;
  /** Where stations are counted from, amid a sentence. */
  readonly from: string;
  readonly mass: ShownMass | null;
  readonly down: Vec3;
  readonly balanced: Balanced;
  readonly keep: KeepBetween | null;
  readonly place: StripPlace;
  readonly wideMm: number;
}

/**
 * "station 761.3 mm ± 1.4 mm from the wing root leading edge; that is 108.2 mm behind the leading edge at buttline 90.0 mm".
 * A CG that keeps no band is no place to balance at: then it is said between which stations to.
 */
export function balanceWords(
  input: Pick<CgPageInput, 'balanced' | 'keep' | 'say' | 'from' | 'place' | 'shown'>,
): string {
  const { balanced, keep, say, from, place, shown } = input;
  const { cgMm, plusMinusMm } = balanced;
  if (!cgMm) return 'Nothing aboard weighs anything yet: there is no balance point.';
  const plusMinus = plusMinusMm === null ? '' : ` ± ${lengthUp(plusMinusMm, say)}`;
  const listed = `station ${fineStation(cgMm[0], say)}${plusMinus} from ${from}`;
  if (!shown.band) return `as listed the CG lies at ${listed}`;
  if (!isKept(keep, cgMm)) {
    if (!keep) return `no station keeps the band; as listed the CG lies at ${listed}`;
    const { fromMm, toMm } = insideSteps(keep, say);
    return `between stations ${fineStation(fromMm, say)} and ${fineStation(toMm, say)}, not as listed: that is ${listed}`;
  }
  const edge =
    'edge' in place
      ? `; that is ${lengthOf(place.balanceMm, say)} behind the leading edge at buttline ${lengthOf(place.edge.buttlineMm, say)}`
      : '';
  return `${listed}${edge}`;
}

/** The ends as they are shown, rounded to the inside. */
function insideSteps({ fromMm, toMm }: KeepBetween, say: Say): KeepBetween {
  const step = say.units === 'metric' ? 0.1 : 0.254;
  const inside = (mm: number, round: (count: number) => number) =>
    round((mm - say.fromMm) / step) * step + say.fromMm;
  return { fromMm: inside(fromMm, stepsUp), toMm: inside(toMm, stepsDown) };
}

const lengthOf = (mm: number, say: Say): string => fineStation(mm, { units: say.units, fromMm: 0 });

/** What may be read off a stand so that the limits are kept; the rounding is to the inside. */
export function keepWords({
  keep,
  balanced,
  say,
  shown,
}: Pick<CgPageInput, 'keep' | 'balanced' | 'say' | 'shown'>): string {
  const { cgMm } = balanced;
  if (!cgMm) return '';
  if (!shown.band) return 'There is no target band to keep.';
  if (!keep) return 'No station in this state keeps the band in every load state.';
  const { fromMm, toMm } = insideSteps(keep, say);
  const range = `It keeps the band, and the margin asked for, in every load state looked at while it balances between ${fineStation(fromMm, say)} and ${fineStation(toMm, say)} in this state, if what is off is a mass or a place that is aboard in all of them.`;
  return isKept(keep, cgMm) ? range : `${range} As listed it does not.`;
}

export function cgBlocks(input: CgPageInput): readonly Block[] {
  const { aircraft, shown, judgement, say, mass, wideMm } = input;
  const { headline, cause } = headAndCause(aircraft, judgement, say);
  const band = judgement.band && { fromMm: judgement.band.forwardMm, toMm: judgement.band.aftMm };
  const chart = judgement.shown ? travelChart(shown.travel, band, say, wideMm) : null;
  return [
    heading('Centre of gravity'),
    words(headline, 'lead'),
    ...(cause ? [words(cause)] : []),
    {
      kind: 'table',
      id: 'facts',
      columns: columnsOf(wideMm, [
        ['', 38],
        ['', 62],
        ['', 80],
      ]),
      rows: verdictFacts(aircraft, judgement, say, mass).map(({ key, label, value, note }) => ({
        id: key,
        cells: [cell(label), cell(value), cell(note)],
      })),
    },
    words(
      'What is called an estimate is one: the neutral point and every margin leave out the propeller, the jet and all that bends. A ± is 95 %. Begin at the forward end of the band.',
      'note',
    ),
    ...(chart
      ? [
          heading(
            `CG over the burn: ${midSentence(stateWords(aircraft, judgement.shown!.positions, ''))}`,
            2,
          ),
          drawn(chart),
        ]
      : []),
    heading('Where to balance it', 2),
    words(`${input.balanced.words}: ${balanceWords(input)}.`, 'lead'),
    words(keepWords(input)),
    ...stateBlocks(input),
    ...packBlocks(input),
    ...ballastBlocks(input),
  ];
}

function stateBlocks({ aircraft, judgement, say, wideMm }: CgPageInput): readonly Block[] {
  const { states, loads } = judgement;
  if (states.length === 0) return [];
  const length = ownUnit('length', say.units).symbol;
  const columns = columnsOf(wideMm, [
    ['Load state', 58],
    [`Full ${length}`, 20, 'right'],
    [`Dry ${length}`, 20, 'right'],
    [`Foremost ${length}`, 22, 'right'],
    [`Aftmost ${length}`, 22, 'right'],
    ['Margin, est.', 20, 'right'],
    ['Against the band', 38],
  ]);
  const station = (point: CgPoint) => cell(bare(point.cgMm[0] - say.fromMm, say));
  const rows = states.map((state, at): Row => {
    const { aftmost } = state;
    const margin = judgement.margin.status === 'estimated' && aftmost.marginPct !== null;
    return {
      id: `state ${at}`,
      cells: [
        cell(stateWords(aircraft, state.positions, '')),
        station(state.full),
        station(state.dry),
        station(state.foremost),
        station(state.aftmost),
        cell(margin ? marginFigure(aftmost.marginPct!).replace(' MAC', '') : '–'),
        cell(againstWords(state, judgement, say)),
      ],
    };
  });
  const looked =
    loads === 'certified'
      ? 'Every load state that flies was looked at, its travel certain to 0.1 mm.'
      : loads === 'sampled'
        ? 'The load states were looked at at samples of their burn; between them the CG may lie a little farther out.'
        : 'Not every load state has been looked at yet.';
  return [heading('Load states', 2), { kind: 'table', id: 'states', columns, rows }, words(looked, 'note')];
}

function againstWords(
  { foremost, aftmost }: StateJudgement,
  { band, statedFor }: Judgement,
  say: Say,
): string {
  if (!band) return 'no band';
  const out = [aftmost, foremost].flatMap(({ outsideMm }) =>
    outsideMm === null || outsideMm === 0
      ? []
      : [`${lengthUp(Math.abs(outsideMm), say)} ${outsideMm > 0 ? 'aft' : 'ahead'}`],
  );
  if (out.length > 0) return `${out.join(', ')}${statedFor ? ' (limits stated for another)' : ''}`;
  return `inside, ${lengthDown(Math.max(0, band.aftMm - aftmost.cgMm[0] - aftmost.maybeAftMm), say)} short of aft`;
}

function shiftCells(allowed: PackShift['allowed'], say: Say): readonly [string, string] {
  if (!allowed) return ['no place keeps it', 'no place keeps it'];
  const one = (mm: number, other: string) =>
    !Number.isFinite(mm) ? 'any' : mm < 0 ? `must go ${lengthUp(-mm, say)} ${other}` : lengthDown(mm, say);
  return [one(allowed.forwardMm, 'aft'), one(allowed.aftMm, 'forward')];
}

function packBlocks({ aircraft, shown, down, say, wideMm }: CgPageInput): readonly Block[] {
  const shifts = packShifts(aircraft, shown, down);
  if (shifts.length === 0) return [];
  const kept = bandToKeep(shown, aircraft);
  const left = packsOf(aircraft).length - shifts.length;
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
      `Before ${kept?.keptFor === 'limits' ? 'a limit' : 'a limit or the margin'} is left in any load state, everything else where it is, rounded down; whether there is room for it is another question.${
        left > 0 ? ` ${left} more packs than ${MOST_PACKS} are not gone through.` : ''
      }`,
      'note',
    ),
  ];
}

function ballastBlocks({ aircraft, say, wideMm }: CgPageInput): readonly Block[] {
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
