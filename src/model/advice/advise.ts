import type { Aircraft } from '../document/types';
import { type Given, judgeFully } from '../judgement/judgeFully';
import type { FindingKind, Judgement } from '../judgement/types';
import { formatLength } from '../units';
import { clearing } from './clearing';
import type { Spoken } from './figures';
import { type Goal, goalAcross, goalsAlong } from './goal';
import { lessBallast } from './lessBallast';
import { moreBallast } from './moreBallast';
import { moversOf, otherMovers, tankMovers } from './movers';
import { type FoundMove, shortestMove, shortestOf } from './moveSearch';
import type { Remedy } from './remedy';
import { tipBallast } from './tipBallast';
import { statesOf, type Workshop } from './trial';
import { twoMoves } from './twoMoves';

/** What would mend an aircraft, and how far that was searched. */
export interface Advice {
  /** The remedy to be spoken; null when there is nothing to mend or nothing was found. */
  readonly remedy: Remedy | null;
  /** What it is for; null when there is nothing to mend. */
  readonly about: 'along' | 'across' | 'fit' | null;
  /**
   * True only when every whole step of every unlocked part's allowed stretch was tried and none did it: then it may be
   * said that no move of one part will do.
   */
  readonly noMoveOfOne: boolean;
  /** What was looked for, in a sentence, where nothing was found; else empty. */
  readonly searched: string;
  /** The judgement that it was all tried against: every load state, certified, and the fit. */
  readonly before: Judgement;
}

/** So much farther than needed a part may go to leave room to the aft limit, and as far again as it must, mm. */
const FARTHER_MM = 10;

/** Places tried for each kind of remedy before the search gives up and says so. */
const MOST_TRIES = 2500;
/** Whole judgements in one advice where each searches the load states again, which takes most of a second. */
const MOST_JUDGED = 12;

/**
 * What would bring the worst of what is wrong back: less ballast, one part or a pair moved, two moved, and ballast last.
 * Each is carried out, in exactly the figures that are spoken, and judged again over every load state and the whole fit
 * before it is given. Takes tens to hundreds of milliseconds: never for a frame of a drag.
 */
export function advise(aircraft: Aircraft, given: Given, spoken: Spoken, judge = judgeFully): Advice {
  const before = judge(aircraft, given);
  const { states, all } = statesOf(aircraft, given);
  const shop: Workshop = {
    aircraft,
    given,
    spoken,
    judge,
    before,
    states,
    tries: { left: MOST_TRIES },
    judgings: { left: all ? Number.POSITIVE_INFINITY : MOST_JUDGED },
    fits: new Map(),
  };
  // Where a sum is no number every remedy would be one of chance.
  const finite = before.findings.every(({ kind }) => kind !== 'not-finite');
  for (const about of finite ? aboutWhat(before) : []) {
    const found = about === 'fit' ? byClearing(shop) : byBalancing(shop, about);
    // After a misfit that nothing clears, the next fault may still have a remedy; a CG that is out comes first.
    if (found.remedy || about !== 'fit') return { about, before, ...found, ...cutShort(shop, found) };
  }
  const unfit = before.findings.some(({ kind }) => kind === 'fit');
  return unfit && finite
    ? {
        about: 'fit',
        before,
        remedy: null,
        noMoveOfOne: false,
        searched: shop.judgings.left > 0 ? SEARCHED_CLEAR : CUT_SHORT,
      }
    : { about: null, before, remedy: null, noMoveOfOne: false, searched: '' };
}

type Found = Pick<Advice, 'remedy' | 'noMoveOfOne' | 'searched'>;

const SEARCHED_CLEAR = 'Searched: moves of one thing by up to 80 mm fore and aft, sideways, up and down.';
const SEARCHED_ALONG =
  'Searched: less ballast, moves of one part, a pair and two parts, and ballast along the hull.';
const SEARCHED_ACROSS = 'Searched: less ballast, moves of one part and of two, and ballast at the tips.';
const CONTRADICTION = 'The limits and the margin cannot both be kept: change one of them.';

const CUT_SHORT =
  'The search was cut short: with so many load states only a few places can be judged in all of them.';

/** What is said of a search that found nothing before its judgements ran out; nothing of any other. */
const cutShort = ({ judgings }: Workshop, { remedy, searched }: Found): Partial<Found> =>
  judgings.left > 0 || remedy
    ? {}
    : { searched: searched.replace(SEARCHED_ALONG, CUT_SHORT).replace(SEARCHED_ACROSS, CUT_SHORT) };

const byClearing = (shop: Workshop): Found => ({
  remedy: clearing(afresh(shop)),
  noMoveOfOne: false,
  searched: '',
});

function byBalancing(shop: Workshop, about: 'along' | 'across'): Found {
  const goals =
    about === 'along' ? goalsAlong(shop.before) : [goalAcross(shop.before)].filter((goal) => goal !== null);
  for (const goal of goals) {
    const { remedy, noMoveOfOne } = byMoving(shop, goal);
    if (remedy) return { remedy, noMoveOfOne, searched: '' };
  }
  const searched = about === 'along' ? SEARCHED_ALONG : SEARCHED_ACROSS;
  const why = goals.length === 0 ? CONTRADICTION : about === 'along' ? spreadWords(shop, goals) : '';
  return { remedy: null, noMoveOfOne: false, searched: why || searched };
}

/** That the CG wanders farther than the limits leave, which nothing but other limits or another layout mends; else empty. */
function spreadWords({ before, spoken: { units } }: Workshop, goals: readonly Goal[]): string {
  const { foremost, aftmost } = before;
  const widest = Math.max(...goals.map(({ lowMm, highMm }) => highMm - lowMm));
  const spreadMm = foremost && aftmost ? aftmost.cgMm[0] - foremost.cgMm[0] : 0;
  if (!(spreadMm > widest)) return '';
  const [spread, left] = [spreadMm, widest].map((mm) => formatLength(mm, units, { fine: true }));
  return `The CG wanders over ${spread} in flight, and limits and margin leave it ${left}. ${SEARCHED_ALONG}`;
}

/** Each search has its own tries, so that one that finds nothing leaves enough for the next. */
const afresh = (shop: Workshop): Workshop => ({ ...shop, tries: { left: MOST_TRIES } });

/** What needs a remedy, in the order of the findings. */
function aboutWhat({ findings }: Judgement): readonly NonNullable<Advice['about']>[] {
  const abouts = findings.flatMap(({ kind }) => aboutOf(kind) ?? []);
  return [...new Set(abouts)];
}

function aboutOf(kind: FindingKind): Advice['about'] {
  switch (kind) {
    case 'fit':
      return 'fit';
    case 'lateral':
      return 'across';
    case 'tail-heavy':
    case 'nose-heavy':
    case 'behind-neutral-point':
    case 'margin-tiny':
    case 'margin-under':
    case 'margin-over':
      return 'along';
    case 'band-behind-neutral-point':
    case 'power':
    case 'no-mass':
    case 'mass-unknown':
    case 'no-band':
    case 'not-finite':
    case 'loads-unchecked':
    case 'fit-unchecked':
    case 'margin-unchecked':
      return null;
  }
}

function byMoving(shop: Workshop, goal: Goal): Omit<Found, 'searched'> {
  const less = lessBallast(afresh(shop), goal);
  if (less) return { remedy: less, noMoveOfOne: false };
  const movers = moversOf(shop.aircraft).filter(({ kind }) => goal.axis === 0 || kind === 'move');
  const single = afresh(shop);
  const move = shortestOf(single, goal, movers);
  if (move) return { remedy: withReserve(shop, goal, move).remedy, noMoveOfOne: false };
  const tanks = burnIsWider(shop, goal) ? shortestOf(afresh(shop), goal, tankMovers(shop.aircraft)) : null;
  const two = tanks ? null : twoMoves(afresh(shop), goal, movers);
  const found = tanks?.remedy ?? two;
  if (found) return { remedy: found, noMoveOfOne: false };
  const rest = afresh(shop);
  const other = shortestOf(rest, goal, otherMovers(shop.aircraft));
  if (other) return { remedy: other.remedy, noMoveOfOne: false };
  return {
    remedy: goal.axis === 0 ? moreBallast(afresh(shop), goal) : tipBallast(afresh(shop), goal),
    noMoveOfOne: single.tries.left > 0 && rest.tries.left > 0 && shop.judgings.left > 0,
  };
}

/** A move that just does it, taken a little farther where that leaves room to the dangerous limit. */
function withReserve(shop: Workshop, goal: Goal, { mover, shiftMm, remedy }: FoundMove): FoundMove {
  const reserved: Goal = { ...goal, ...goal.reserved };
  const longestMm = 2 * Math.abs(shiftMm) + FARTHER_MM;
  return shortestMove(afresh(shop), reserved, mover, { longestMm }) ?? { mover, shiftMm, remedy };
}

/** Whether some load state travels farther over its burn than the limits are apart. */
const burnIsWider = ({ states }: Workshop, { axis, lowMm, highMm }: Goal): boolean =>
  states.some(({ balance }) => {
    const along = balance.travel.map(({ cgMm }) => cgMm[axis]);
    return Math.max(...along) - Math.min(...along) > highMm - lowMm;
  });
