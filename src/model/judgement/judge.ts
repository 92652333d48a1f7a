import { switchesOf } from '../airframe/loadSwitches';
import type { Balance } from '../balance/balance';
import type { Aircraft } from '../document/types';
import { bandFindings, fitFindings, lateralFindings, marginFindings } from './findings';
import { type StateBalance, stateBalances } from './flyingStates';
import { lateralLimitMm, marginWish } from './limits';
import { type Against, cgPoint, isFinitePoint, judgedState } from './states';
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
export function judge(aircraft: Aircraft, known: Known): Judgement {
  const { shown, states, all } = stateBalances(aircraft, known);
  const band = judgedBand(shown.balance);
  const against: Against = { band, neutralPoint: neutralPointOf(shown.balance) };
  const judged = states.flatMap((state) => judgedState(state, against) ?? []);
  const searched = searchedPoints(known, against);
  const points = [...judged.flatMap((state) => [state.foremost, state.aftmost]), ...searched];
  const foremost = farthest(points, ({ cgMm }) => -cgMm[0]);
  const aftmost = farthest(points, ({ cgMm }) => cgMm[0]);
  const mostLateral = farthest([...judged.map((state) => state.mostLateral), ...searched], ({ cgMm }) =>
    Math.abs(cgMm[1]),
  );
  const margin = marginJudgement(aircraft, shown.balance, foremost, aftmost);
  const limitMm = lateralLimitMm(aircraft);
  const loads = loadsChecked(aircraft, known, all);
  const findings = sortedFindings([
    ...massFindings(judged, states.length),
    ...finiteFindings(states, searched, band),
    ...bandFindings(band, foremost, aftmost),
    ...marginFindings(margin, band),
    ...lateralFindings(limitMm, mostLateral),
    ...fitFindings(known.fit),
    ...(loads === 'unchecked' ? [{ kind: 'loads-unchecked', severity: 'unknown' } as const] : []),
  ]);
  return {
    severity: worstOf(findings),
    severitySoFar: worstOf(findings.filter(({ kind }) => !kind.endsWith('-unchecked'))),
    findings,
    band,
    shown: judgedState(shown, against),
    states: judged,
    foremost,
    aftmost,
    mostLateral,
    margin,
    lateralLimitMm: limitMm,
    fit: known.fit,
    certainty: known.certainty,
    loads,
  };
}

const worstOf = (findings: readonly Finding[]): Severity => findings[0]?.severity ?? 'good';

const sortedFindings = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort((a, b) => compareSeverity(a.severity, b.severity));

/** The one that lies farthest out; one that is no figure counts as the farthest, so that it is found. */
function farthest(points: readonly CgPoint[], out: (point: CgPoint) => number): CgPoint | null {
  let best: CgPoint | null = null;
  for (const point of points) if (!best || !(out(point) <= out(best))) best = point;
  return best;
}

/** An estimated band counts only while its estimate is that of this structure. */
function judgedBand({ band, bandFrom, estimateFresh }: Balance): JudgedBand | null {
  if (!band || !bandFrom || (bandFrom === 'estimate' && !estimateFresh)) return null;
  return { forwardMm: band.forwardMm, aftMm: band.aftMm, from: bandFrom };
}

function neutralPointOf({ estimate, estimateFresh }: Balance): Against['neutralPoint'] {
  return estimate && estimateFresh
    ? { stationMm: estimate.neutralPointMm, macMm: estimate.macMm }
    : null;
}

function searchedPoints({ loads }: Known, against: Against): readonly CgPoint[] {
  if (loads.status !== 'found' || !loads.envelope) return [];
  const { foremost, aftmost, leftmost, rightmost } = loads.envelope;
  return [foremost, aftmost, leftmost, rightmost].map((state) => cgPoint(state, state.positions, against));
}

function loadsChecked(aircraft: Aircraft, { loads }: Known, all: boolean): Judgement['loads'] {
  if (loads.status === 'found' && loads.envelope) return 'certified';
  return all || switchesOf(aircraft).length === 0 ? 'sampled' : 'unchecked';
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
  };
}

function massFindings(judged: readonly StateJudgement[], count: number): readonly Finding[] {
  return judged.length < count || count === 0 ? [{ kind: 'no-mass', severity: 'unknown' }] : [];
}

function finiteFindings(
  states: readonly StateBalance[],
  searched: readonly CgPoint[],
  band: JudgedBand | null,
): readonly Finding[] {
  const limits = band ? [band.forwardMm, band.aftMm] : [];
  const finite =
    states.every(({ balance }) => balance.travel.every(isFinitePoint)) &&
    searched.every(isFinitePoint) &&
    limits.every(Number.isFinite);
  return finite ? [] : [{ kind: 'not-finite', severity: 'unknown' }];
}
