import type { Vec3 } from '../../engine/geometry/types';
import { stepsDown, stepsUp } from '../../engine/geometry/wholeSteps';
import { flyingSwitches } from '../airframe/loadSwitches';
import type { Balance } from '../balance/balance';
import { midSentence } from '../document/inWords';
import type { Aircraft } from '../document/types';
import { statedMoment } from '../judgement/statedPoint';
import type { CgPoint, Judgement, StateJudgement } from '../judgement/types';
import { withPower } from '../judgement/withPower';
import { ownUnit } from '../units';
import { headAndCause, marginFigure } from '../words/headline';
import { momentWords } from '../words/momentWords';
import { fineStation, lengthDown, lengthUp, type Say } from '../words/say';
import { type ShownMass, verdictFacts } from '../words/verdictFacts';
import { type Balanced, isKept, type KeepBetween, stateWords } from './balancing';
import { unchecked } from './blocking';
import { type Block, cell, columnsOf, drawn, heading, type Row, words } from './blocks';
import type { StripPlace } from './cgStrips';
import { ballastBlocks, packBlocks } from './packBlocks';
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
  /** The attitude on the bench; null when it is level. */
  readonly held: string | null;
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
  if (!cgMm) return 'no balance point, as nothing aboard weighs anything yet';
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
  aircraft,
  keep,
  balanced,
  say,
  shown,
}: Pick<CgPageInput, 'aircraft' | 'keep' | 'balanced' | 'say' | 'shown'>): string {
  const { cgMm } = balanced;
  if (!cgMm) return '';
  if (!shown.band) return 'There is no target band to keep.';
  const stated = statedMoment(aircraft);
  const when = stated
    ? `in the load state that the limits were stated for (${momentWords(aircraft, stated) || 'as it starts'})`
    : 'in every load state that flies';
  if (!keep) return `No station in this state keeps the band ${when}.`;
  const { fromMm, toMm } = insideSteps(keep, say);
  const range = `It keeps the band, and the margin asked for, ${when} while it balances between ${fineStation(fromMm, say)} and ${fineStation(toMm, say)} in this state, if what is off is a mass or a place that is aboard in all of them.`;
  return isKept(keep, cgMm) ? range : `${range} As listed it does not.`;
}

export function cgBlocks(input: CgPageInput): readonly Block[] {
  const { aircraft, shown, judgement, say, mass, wideMm, held } = input;
  const { headline, cause } = headAndCause(aircraft, withPower(aircraft, judgement), say);
  const band = judgement.band && { fromMm: judgement.band.forwardMm, toMm: judgement.band.aftMm };
  const chart = judgement.shown ? travelChart(shown.travel, band, say, wideMm) : null;
  return [
    heading('Centre of gravity'),
    words(isPartly(judgement) ? `${headline}, as far as it is checked` : headline, 'lead'),
    ...(cause ? [words(cause)] : []),
    ...(held ? [words(heldWords(held), 'warn')] : []),
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
        cells: [
          cell(label),
          cell(value),
          cell(key === 'mass' ? [note, loadingWords(input)].filter(Boolean).join(', ') : note),
        ],
      })),
    },
    words(
      'What is called an estimate is one: the neutral point and every margin leave out the propeller, the jet and all that bends. A ± is 95 %. Begin at the forward end of the band.',
      'note',
    ),
    ...(chart
      ? [
          heading(
            `${shown.travel.length > 1 ? 'CG over the burn' : 'CG and band'}: ${midSentence(stateWords(aircraft, judgement.shown!.positions, ''))}`,
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

/** What the mass is that of: the fuel and the switches as shown on the bench. */
function loadingWords({ aircraft, shown, judgement }: CgPageInput): string {
  const { usableMl, remainingMl } = shown;
  const fuelFraction = usableMl > 0 ? remainingMl / usableMl : 1;
  return momentWords(aircraft, { positions: judgement.shown?.positions ?? {}, fuelFraction });
}

/** Not everything is checked yet, so that what is found so far must not sound like an answer. */
const isPartly = ({ findings }: Judgement): boolean =>
  findings.some(({ kind }) => kind in unchecked) && findings.every(({ kind }) => kind in unchecked);

const heldWords = (held: string): string =>
  `Not level: the bench holds it so: ${midSentence(held)}. The answer, the CG, its travel, the load states and the packs on this page are those of that attitude; only where to balance it is for the aircraft level.`;

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
  const count = flyingSwitches(aircraft).reduce((product, { positions }) => product * positions.length, 1);
  const listedWords = states.length < count ? ` The table has ${states.length} of ${count} load states.` : '';
  return [
    heading('Load states', 2),
    { kind: 'table', id: 'states', columns, rows },
    words(`${looked}${listedWords}`, 'note'),
  ];
}

function againstWords(
  { foremost, aftmost }: StateJudgement,
  { band, statedFor }: Judgement,
  say: Say,
): string {
  if (!band) return 'no band';
  // Where all of the travel lies on one side, its farther end says it all.
  const out = [Math.max(0, aftmost.outsideMm ?? 0), Math.min(0, foremost.outsideMm ?? 0)].flatMap(
    (outsideMm) =>
      outsideMm === 0 ? [] : [`${lengthUp(Math.abs(outsideMm), say)} ${outsideMm > 0 ? 'aft' : 'ahead'}`],
  );
  if (out.length > 0) return `${out.join(', ')}${statedFor ? ' (limits stated for another)' : ''}`;
  return `inside, ${lengthDown(Math.max(0, band.aftMm - aftmost.cgMm[0] - aftmost.maybeAftMm), say)} short of aft`;
}
