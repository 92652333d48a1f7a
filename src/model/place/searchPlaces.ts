import type { Vec3 } from '../../engine/geometry/types';
import { arrange } from '../../engine/place/arrange';
import { arrangeSentence } from '../../engine/place/arrangeSentence';
import type { SolveMilp } from '../../engine/place/milp';
import { bestOfSeveral } from '../../engine/place/oneOfSeveral';
import { sigmasFor } from '../../engine/place/robust';
import type { ArrangeAnswer } from '../../engine/place/searchState';
import { shrunkBand } from '../../engine/place/shrunkBand';
import type { PlaceProblem } from '../../engine/place/types';
import type { Aircraft } from '../document/types';
import { recheckArrangement } from './applyArrangement';
import { asBefore } from './asBefore';
import { largestSigmaMm } from './cgSigma';
import { correctedProblem } from './correctedProblem';
import { withoutRefused } from './cuts';
import { littleMoved } from './littleMoved';
import { placeProblem } from './placeProblem';
import type { PlaceSettings } from './placeSettings';
import { soundestSoFar } from './soundest';

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
    const one = searchOne(aircraft, request, { ...tools, timeMs }, variant);
    if ('fault' in one) return one;
    found.push(one);
  }
  const { index, answer } = bestOfSeveral(found.map((one) => one.answer));
  return { ...found[index]!, answer: variants.length > 1 ? answer : found[0]!.answer };
}

/** More rounds of refusals than this help nobody. */
const MOST_ROUNDS = 24;
/** This share of the time is kept for the end. */
const KEPT_BACK = 0.3;
/** Of the time that is left, what the problem as it was asked may take, and one of those cut after it. */
const FIRST_SHARE = 0.4;
const ROUND_SHARE = 0.25;

function searchOne(
  aircraft: Aircraft,
  { settings, probability }: PlaceRequest,
  tools: PlaceTools,
  variant: number,
): PlaceOutcome {
  const question = placeProblem(aircraft, settings);
  if ('fault' in question) return question;
  const { notes } = question;
  const { emptied = [] } = settings;
  const downs = [settings.down, ...(settings.alsoDown ?? [])];
  const endMs = tools.now() + tools.timeMs;
  const leftMs = () => endMs - tools.now();
  const sure =
    probability === null ? null : sureProblem(aircraft, question.problem, settings.down, probability);
  if (sure && 'fault' in sure)
    return { variant, problem: question.problem, answer: noneSure(), notUsed: [], notes, price: sure.fault };
  // Beside certainty the plain answer is wanted too, to say what it costs.
  const plain = sure && arrange(question.problem, { ...tools, timeMs: leftMs() / 3, onProgress: () => {} });
  const state = { problem: sure?.problem ?? question.problem, notUsed: [] as string[] };
  const cutTimes = new Map<string, number>();
  let first: ArrangeAnswer | null = null;
  let answer: ArrangeAnswer | null = null;
  const tell = (told: ArrangeAnswer, problem: PlaceProblem): PlaceFound => ({
    variant,
    problem,
    answer: told,
    notUsed: [...new Set(state.notUsed)],
    notes,
    price: sure && plain ? priceWords(told, plain, sure.marginMm, probability!) : null,
  });
  const soundest = soundestSoFar(
    (best, problem) => recheckArrangement(aircraft, problem, best, downs, { emptied, waysIn: true }).refusals,
    sure?.marginMm ?? Number.NEGATIVE_INFINITY,
  );
  const start = asBefore(question.problem, emptied);
  if (start) {
    const { wantedMarginMm = 0 } = question.problem;
    const keptMarginMm = start.marginMm >= wantedMarginMm ? wantedMarginMm : 0;
    soundest.ask(start, question.problem, keptMarginMm);
  }
  for (let round = 0; round < MOST_ROUNDS && leftMs() > tools.timeMs * KEPT_BACK; round++) {
    const { problem } = state;
    let stopped = false;
    answer = arrange(problem, {
      ...tools,
      timeMs: leftMs() * (round === 0 ? FIRST_SHARE : ROUND_SHARE),
      cancelled: () => stopped,
      onProgress: (progress) => {
        const { best, proved, keptMarginMm } = progress;
        if (stopped || !best || !soundest.isWorthAsking(progress)) return;
        const refusals = soundest.ask(best, problem, keptMarginMm);
        if (refusals.length === 0) tools.onProgress?.(tell(asFirst(progress, first), problem));
        // What cannot be built is not worth a larger margin: it is taken out at once.
        else if (proved) stopped = true;
      },
    });
    if (sure && answer.keptMarginMm < sure.marginMm) answer = { ...answer, best: null };
    first ??= answer;
    if (!answer.best) break;
    const refusals = soundest.ask(answer.best, problem, answer.keptMarginMm);
    if (refusals.length === 0) return tell(asFirst(answer, first === answer ? null : first), problem);
    if (refusals.every(({ what }) => what === 'balance')) {
      state.problem = correctedProblem(aircraft, problem, answer.best, downs, emptied);
      continue;
    }
    state.notUsed.push(...refusals.map(({ sentence }) => sentence));
    const without = withoutRefused(aircraft, problem, answer.best, refusals, cutTimes);
    if (!without) break;
    for (const id of without.cutIds) cutTimes.set(id, (cutTimes.get(id) ?? 0) + 1);
    state.problem = without.problem;
  }
  if (first?.boundG === Number.POSITIVE_INFINITY) return tell(first, state.problem);
  const means = { solve: tools.solve, now: tools.now };
  const kept = littleMoved(question.problem, means, leftMs, soundest.isSound, soundest.best());
  return tell(
    asFirst(
      { ...(answer ?? noneSure()), best: kept?.best ?? null, keptMarginMm: kept?.keptMarginMm ?? 0 },
      first ?? noneSure(),
    ),
    kept?.problem ?? state.problem,
  );
}

/** What came after a refusal, with the proofs of the problem as it was asked first. */
function asFirst(answer: ArrangeAnswer, first: ArrangeAnswer | null): ArrangeAnswer {
  if (!first) return answer;
  const { best } = answer;
  const boundG = first.boundG;
  const told = {
    ...answer,
    boundG,
    gapG: best && Math.max(0, best.ballastG - boundG),
    proved: best !== null && best.ballastG <= boundG + 1e-6,
    marginBoundMm: first.marginBoundMm,
    marginProved: false,
    movesProved: false,
  };
  return { ...told, sentence: arrangeSentence(told) };
}

const noneSure = (): ArrangeAnswer => ({
  best: null,
  boundG: 0,
  gapG: null,
  proved: false,
  marginBoundMm: null,
  marginProved: false,
  movesProved: false,
  keptMarginMm: 0,
  sentence: arrangeSentence({ best: null, boundG: 0, proved: false }),
});

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
