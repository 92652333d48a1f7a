import type { Vec3 } from '../../engine/geometry/types';
import { type ArrangeOrder, arrange } from '../../engine/place/arrange';
import { arrangeSentence } from '../../engine/place/arrangeSentence';
import { fewestFor } from '../../engine/place/fewestMoves';
import type { Around } from '../../engine/place/leadShares';
import type { SolveMilp } from '../../engine/place/milp';
import { bestOfSeveral } from '../../engine/place/oneOfSeveral';
import { sigmasFor } from '../../engine/place/robust';
import { type ArrangeAnswer, SAME_MARGIN_MM } from '../../engine/place/searchState';
import { shrunkBand } from '../../engine/place/shrunkBand';
import { SAME_G } from '../../engine/place/tolerances';
import type { Arrangement, PlaceProblem } from '../../engine/place/types';
import type { Aircraft } from '../document/types';
import { recheckArrangement } from './applyArrangement';
import { asBefore, asPresent } from './asBefore';
import { largestSigmaMm } from './cgSigma';
import { correctedProblem } from './correctedProblem';
import { withoutRefused } from './cuts';
import { groundOf } from './ground';
import { hunt, placesOf } from './hunt';
import { placeProblem } from './placeProblem';
import type { PlaceSettings } from './placeSettings';
import { type Candidate, type Soundest, soundestSoFar } from './soundest';

/** What is asked: the aircraft to start from, or several of which one is to be chosen, and what for. */
export interface PlaceRequest {
  /** The first is as things are; the others stand for other parts in the place of some. */
  readonly variants: readonly { readonly name: string; readonly aircraft: Aircraft }[];
  readonly settings: PlaceSettings;
  /** Null to take the figures at their word. */
  readonly probability: number | null;
}

export interface PlaceTools {
  readonly solve: SolveMilp;
  /** A clock, ms. */
  readonly now: () => number;
  readonly timeMs: number;
  readonly onProgress?: (progress: PlaceFound) => void;
}

/** What was found for one of the variants, sound as the balance and the fit see it. */
export interface PlaceFound {
  readonly variant: number;
  readonly problem: PlaceProblem;
  readonly answer: ArrangeAnswer;
  /** What had to be left aside because it cannot be built, in sentences. */
  readonly notUsed: readonly string[];
  /** What is not as it was asked. */
  readonly notes: readonly string[];
  /** What certainty costs, in a sentence; null where it was not asked for. */
  readonly price: string | null;
}

export type PlaceOutcome = PlaceFound | { readonly fault: string };

/**
 * The whole search for an aircraft: its problem solved, the solution put on the aircraft and worked out again by the
 * balance and the fit in every load state, what they refuse taken out of the problem, and on until nothing is refused. What
 * is proved of the problem as it was first asked stays proved; what is left out is named.
 */
export function searchPlaces(request: PlaceRequest, tools: PlaceTools): PlaceOutcome {
  const { variants } = request;
  const endMs = tools.now() + tools.timeMs;
  const found: PlaceFound[] = [];
  for (const [variant, { aircraft }] of variants.entries()) {
    const timeMs = Math.max(1, (endMs - tools.now()) / (variants.length - variant));
    const searched = searchOne(aircraft, request, { ...tools, timeMs }, variant);
    if ('fault' in searched) return searched;
    found.push(searched);
  }
  const { index, answer } = bestOfSeveral(found.map((searched) => searched.answer));
  return { ...found[index]!, answer: variants.length > 1 ? answer : found[0]!.answer };
}

/** More rounds of refusals than this help nobody. */
const MOST_ROUNDS = 24;
/** Of the time that is left: what the first climb may take, then the problem as it was asked, then each problem cut after it. */
const CLIMB_SHARE = 0.35;
const FIRST_SHARE = 0.5;
const ROUND_SHARE = 0.25;
/** Of all the time at most, for the proof that no fewer moves do. */
const MOVES_SHARE = 0.15;
/** With less of the time left no further round is begun. */
const END_SHARE = 0.08;

function searchOne(
  aircraft: Aircraft,
  { settings, probability }: PlaceRequest,
  tools: PlaceTools,
  variant: number,
): PlaceOutcome {
  const { solve, now, timeMs } = tools;
  const endMs = now() + timeMs;
  const question = placeProblem(aircraft, settings);
  if ('fault' in question) return question;
  const { notes } = question;
  const { emptied = [] } = settings;
  const downs = [settings.down, ...(settings.alsoDown ?? [])];
  const leftMs = () => endMs - now();
  const sure =
    probability === null ? null : sureProblem(aircraft, question.problem, settings.down, probability);
  if (sure && 'fault' in sure)
    return { variant, problem: question.problem, answer: NOTHING, notUsed: [], notes, price: sure.fault };
  // Beside certainty the plain answer is wanted too, to say what it costs.
  const plain = sure && arrange(question.problem, { solve, now, timeMs: leftMs() / 3 });
  const asked = sure?.problem ?? question.problem;
  const notUsed = new Set<string>();
  let first: ArrangeAnswer | null = null;
  let fewest: Arrangement | null = null;
  const tell = (taken: Candidate | null): PlaceFound => {
    const answer = soundAnswer(taken, first, fewest);
    return {
      variant,
      problem: taken?.problem ?? asked,
      answer,
      notUsed: [...notUsed],
      notes,
      price: sure && plain ? priceWords(answer, plain, sure.marginMm, probability!) : null,
    };
  };
  const soundest = soundestSoFar(
    (best, problem) => recheckArrangement(aircraft, problem, best, downs, { emptied, waysIn: true }),
    sure?.marginMm ?? Number.NEGATIVE_INFINITY,
    (taken) => tools.onProgress?.(tell(taken)),
  );
  const before = asBefore(asked, emptied);
  const { wantedMarginMm = 0 } = asked;
  if (before) {
    const keptMarginMm = before.marginMm >= wantedMarginMm ? wantedMarginMm : 0;
    soundest.take({ best: before, problem: asked, keptMarginMm });
  }
  const huntFor = (ms: number, from: Around | null, also: Around | null) => {
    const untilMs = now() + ms;
    const ground = groundOf(aircraft, downs, emptied, () => untilMs - now());
    if (from) hunt(asked, from, also?.map((place) => [place]) ?? [], { ground, soundest, solve });
  };
  const present = asPresent(asked);
  huntFor(leftMs() * CLIMB_SHARE, present, null);
  first = arrange(asked, {
    solve,
    now,
    timeMs: leftMs() * FIRST_SHARE,
    onProgress: (soFar) => {
      first = soFar;
      tools.onProgress?.(tell(soundest.best()));
    },
  });
  let problem = asked;
  let answer = first;
  const cutTimes = new Map<string, number>();
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { best, keptMarginMm } = answer;
    if (!best || isDone(soundest.best(), first)) break;
    const said = soundest.take({ best, problem, keptMarginMm });
    if (said === null || isDone(soundest.best(), first) || leftMs() < timeMs * END_SHARE) break;
    const from = soundest.best();
    const start = (from && placesOf(asked, from.best.placed)) ?? present;
    huntFor(leftMs() * ROUND_SHARE, start, placesOf(asked, best.placed));
    if (isDone(soundest.best(), first) || leftMs() < timeMs * END_SHARE) break;
    if (said.every(({ what }) => what === 'balance')) {
      problem = correctedProblem(aircraft, problem, best, downs, emptied);
    } else {
      for (const { what, sentence } of said) if (what !== 'balance') notUsed.add(sentence);
      const without = withoutRefused(aircraft, problem, best, said, cutTimes);
      if (!without) break;
      for (const id of without.cutIds) cutTimes.set(id, (cutTimes.get(id) ?? 0) + 1);
      problem = without.problem;
    }
    answer = arrange(problem, { solve, now, timeMs: leftMs() * ROUND_SHARE });
  }
  const taken = soundest.best();
  if (taken && !soundAnswer(taken, first, null).movesProved)
    fewest = fewestOf(asked, soundest, { solve, now, timeMs: Math.min(leftMs(), timeMs * MOVES_SHARE) });
  return tell(soundest.best());
}

/** So often is one with fewer moves taken and still fewer are looked for. */
const MOST_FEWER = 4;

/** The arrangement that nothing with fewer moves can stand beside, if it was proved; fewer moves that can be built are taken. */
function fewestOf(asked: PlaceProblem, soundest: Soundest, order: ArrangeOrder): Arrangement | null {
  const endMs = order.now() + order.timeMs;
  for (let round = 0; round < MOST_FEWER && order.now() < endMs; round++) {
    const { best, keptMarginMm } = soundest.best()!;
    const { proved, fewer } = fewestFor(asked, best, { ...order, timeMs: endMs - order.now() });
    if (!fewer) return proved ? best : null;
    const said = soundest.take({ best: fewer, problem: asked, keptMarginMm });
    if (said === null || said.length > 0) return null;
  }
  return null;
}

/** Whether nothing could be better by ballast and margin than what there is. */
const isDone = (taken: Candidate | null, first: ArrangeAnswer): boolean =>
  taken !== null && soundAnswer(taken, first, null).marginProved;

/**
 * What is sound, with what is proved of the problem as it was asked: that knows less than the fit, so its bounds hold for all
 * that can be built. A bound that was found with the margin wanted says nothing of less. `fewest` is an arrangement of which it
 * was proved that nothing with fewer moves has its ballast and its margin.
 */
function soundAnswer(
  taken: Candidate | null,
  first: ArrangeAnswer | null,
  fewest: Arrangement | null,
): ArrangeAnswer {
  if (!taken)
    return first && first.boundG === Number.POSITIVE_INFINITY
      ? first
      : { ...NOTHING, boundG: first?.boundG ?? 0 };
  const { best, keptMarginMm } = taken;
  const bounds = first && first.keptMarginMm <= keptMarginMm ? first : null;
  const boundG = Math.min(bounds?.boundG ?? 0, best.ballastG);
  const proved = bounds !== null && best.ballastG <= boundG + SAME_G;
  const marginBoundMm = bounds?.best && bounds.best.ballastG === best.ballastG ? bounds.marginBoundMm : null;
  const marginProved = proved && marginBoundMm !== null && best.marginMm >= marginBoundMm - SAME_MARGIN_MM;
  const leastMoves = marginProved && bounds.movesProved ? bounds.best!.moves : 0;
  const movesProved = best === fewest || best.moves <= leastMoves;
  const outcome = {
    best,
    boundG,
    gapG: best.ballastG - boundG,
    proved,
    marginBoundMm,
    marginProved,
    movesProved,
    keptMarginMm,
  };
  return { ...outcome, sentence: arrangeSentence(outcome) };
}

const NOTHING: ArrangeAnswer = {
  best: null,
  boundG: 0,
  gapG: null,
  proved: false,
  marginBoundMm: null,
  marginProved: false,
  movesProved: false,
  keptMarginMm: 0,
  sentence: arrangeSentence({ best: null, boundG: 0, proved: false }),
};

/** The problem with the margin that the uncertainty asks for. */
function sureProblem(aircraft: Aircraft, problem: PlaceProblem, down: Vec3, probability: number) {
  const marginMm = sigmasFor(probability) * largestSigmaMm(aircraft, down);
  const band = shrunkBand(problem.band, marginMm);
  if (!band) return { fault: 'The band is too narrow for that certainty.' };
  return { problem: { ...problem, wantedMarginMm: marginMm }, marginMm };
}

/** Certainty never costs less than nothing: what is sure is within the plain limits too. */
function priceWords(
  sure: ArrangeAnswer,
  plain: ArrangeAnswer,
  marginMm: number,
  probability: number,
): string {
  const percent = `${Math.round(probability * 1000) / 10} %`;
  if (!sure.best) return `No arrangement found lies in the band with ${percent} certainty.`;
  const leastG = Math.min(plain.best?.ballastG ?? Number.POSITIVE_INFINITY, sure.best.ballastG);
  const about = sure.proved && plain.proved ? '' : 'about ';
  return `${percent} certainty costs ${about}${Math.round((sure.best.ballastG - leastG) * 10) / 10} g: the CG must lie ${marginMm.toFixed(1)} mm inside the limits.`;
}
