import { TOUCH_MM } from '../../engine/balance/band';
import { holdsInFlight } from '../airframe/aboard';
import type { Balance } from '../balance/balance';
import { LINE_95 } from '../balance/certainty';
import type { Aircraft } from '../document/types';
import { CERTAIN_MM } from '../loads/certain';
import type { LoadExtreme } from '../loads/loadStates';
import { bandFindings, fitFindings, lateralFindings, marginFindings, massFindings } from './findings';
import { type StateBalance, stateBalances } from './flyingStates';
import { lateralLimitMm, marginWish } from './limits';
import { statedPoint } from './statedPoint';
import { type Against, cgPoint, isFarther, isFinitePoint, judgedState } from './states';
import {
  type CgPoint,
  compareSeverity,
  type Finding,
  type JudgedBand,
  type Judgement,
  type Known,
  type MarginJudgement,
  type Severity,
  type StateJudgement,
} from './types';

/**
 * The whole judgement of an aircraft: CG against the band in every load state, static margin, sideways balance, fit, and
 * what is not known. Load states of the stand are left out. Extremes come from the certified search where it has been
 * done, and from the fuel states of each load state besides; nothing that is not finite or not checked is ever good.
 * Pure, and quick enough for every frame of a drag while there are few load states.
 */
export function judge(aircraft: Aircraft, facts: Known): Judgement {
  const { shown, states, all } = stateBalances(aircraft, facts);
  const band = judgedBand(shown.balance);
  const against: Against = { band, neutralPoint: neutralPointOf(shown.balance) };
  const statedFor = band && statedPoint(aircraft, facts, against);
  const judged = states.flatMap((state) => judgedState(state, against) ?? []);
  const searched = searchedPoints(facts, against);
  const points: readonly CgPoint[] = [
    ...judged.flatMap((state) => [state.foremost, state.aftmost]),
    ...searched,
  ];
  const foremost = farthest(points, ({ cgMm }) => -cgMm[0]);
  const aftmost = farthest(points, ({ cgMm, maybeAftMm }) => cgMm[0] + maybeAftMm);
  const mostLateral = farthest([...judged.map((state) => state.mostLateral), ...searched], ({ cgMm }) =>
    Math.abs(cgMm[1]),
  );
  const margin =
    marginAwaited(aircraft, facts) ?? marginJudgement(aircraft, shown.balance, foremost, aftmost);
  const limitMm = lateralLimitMm(aircraft);
  // What only the balancing stand sees is information.
  const fit = facts.fit?.filter((problem) => holdsInFlight(problem.states)) ?? null;
  const loads = loadsChecked(facts, states, all);
  const findings = sortedFindings([
    ...figureFindings(states, judged, searched),
    ...bandFindings(band, statedFor ?? foremost, statedFor ?? aftmost),
    ...marginFindings(margin, band),
    ...lateralFindings(limitMm, mostLateral),
    ...fitFindings(fit),
    ...massFindings(aircraft),
    ...(loads === 'unchecked' ? [{ kind: 'loads-unchecked', severity: 'unknown' } as const] : []),
  ]);
  return {
    severity: worstOf(findings),
    severitySoFar: worstOf(findings.filter(({ kind }) => !kind.endsWith('-unchecked'))),
    findings,
    band,
    statedFor,
    shown: judgedState(shown, against),
    states: judged,
    foremost,
    aftmost,
    mostLateral,
    margin,
    lateralLimitMm: limitMm,
    fit,
    certainty: facts.certainty,
    loads,
  };
}

const worstOf = (findings: readonly Finding[]): Severity => findings[0]?.severity ?? 'good';

const sortedFindings = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort((a, b) => compareSeverity(a.severity, b.severity));

/** The one that lies farthest out; the first of those that lie equally far. */
function farthest(points: readonly CgPoint[], out: (point: CgPoint) => number): CgPoint | null {
  let best: CgPoint | null = null;
  for (const point of points) if (!best || isFarther(out(point), out(best))) best = point;
  return best;
}

/** An estimated band counts only while its estimate is that of this structure. */
function judgedBand({ band, bandFrom, estimateFresh }: Balance): JudgedBand | null {
  if (!band || !bandFrom || (bandFrom === 'estimate' && !estimateFresh)) return null;
  return { forwardMm: band.forwardMm, aftMm: band.aftMm, from: bandFrom };
}

function neutralPointOf({ estimate, estimateFresh }: Balance): Against['neutralPoint'] {
  return estimate && estimateFresh ? { stationMm: estimate.neutralPointMm, macMm: estimate.macMm } : null;
}

function searchedPoints({ loads }: Known, against: Against): readonly CgPoint[] {
  if (loads.status !== 'found' || !loads.envelope) return [];
  const { foremost, aftmost, leftmost, rightmost } = loads.envelope;
  return [
    ...[foremost, leftmost, rightmost].map((state) => cgPoint(state, state.positions, against)),
    cgPoint(aftmost, aftmost.positions, against, aftmost.withinMm ?? 0),
  ];
}

function loadsChecked({ loads }: Known, states: readonly StateBalance[], all: boolean): Judgement['loads'] {
  if (loads.status === 'found' && loads.envelope) {
    const { foremost, aftmost } = loads.envelope;
    if (foremost.withinMm === null || aftmost.withinMm === null) return 'unchecked';
    const certain = ({ withinMm }: LoadExtreme) => withinMm !== null && withinMm <= CERTAIN_MM + TOUCH_MM;
    return certain(foremost) && certain(aftmost) ? 'certified' : 'sampled';
  }
  if (!all) return 'unchecked';
  return states.every(({ balance }) => balance.travelWithinMm <= CERTAIN_MM) ? 'certified' : 'sampled';
}

/** That the margin is not checked; null where it is, or where nothing aboard could have one. */
function marginAwaited({ structure }: Aircraft, { estimating = 'done' }: Known): MarginJudgement | null {
  if (estimating === 'done' || !structure.some(({ kind }) => kind === 'surface')) return null;
  return { status: 'unknown', why: estimating === 'failed' ? 'not checked' : 'not checked yet' };
}

function marginJudgement(
  aircraft: Aircraft,
  { estimate, estimateFresh }: Balance,
  foremost: CgPoint | null,
  aftmost: CgPoint | null,
): MarginJudgement {
  if (!estimate) return { status: 'unknown', why: 'no estimate' };
  if (!estimateFresh) return { status: 'unknown', why: 'out of date' };
  if (!foremost || !aftmost) return { status: 'unknown', why: 'no CG' };
  const [least, most] = [aftmost.marginPct, foremost.marginPct];
  if (least === null || most === null || !Number.isFinite(least) || !Number.isFinite(most)) {
    return { status: 'unknown', why: 'not finite' };
  }
  const { leastPct, mostPct, wanted } = marginWish(aircraft);
  return {
    status: 'estimated',
    least: { ...aftmost, marginPct: least },
    most: { ...foremost, marginPct: most },
    leastWantedPct: leastPct,
    mostWantedPct: mostPct,
    wanted,
    neutralPointMm: estimate.neutralPointMm,
    macMm: estimate.macMm,
    plusMinusPct: (100 * LINE_95 * estimate.neutralPointSigmaMm) / estimate.macMm,
  };
}

/** What has no figures: a sum that is no number, or a load state without any mass. */
function figureFindings(
  states: readonly StateBalance[],
  judged: readonly StateJudgement[],
  searched: readonly CgPoint[],
): readonly Finding[] {
  if (!states.every(({ balance }) => balance.finite) || !searched.every(isFinitePoint)) {
    return [{ kind: 'not-finite', severity: 'bad' }];
  }
  return judged.length < states.length ? [{ kind: 'no-mass', severity: 'unknown' }] : [];
}
