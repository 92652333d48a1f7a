import { TINY_MARGIN_PCT } from '../judgement/limits';
import { compareSeverity, type Finding, type FindingKind, type Judgement } from '../judgement/types';
import { CERTAIN_MM } from '../loads/certain';

/** What a remedy is to bring about: the CG between two limits along one axis, and these findings gone. */
export interface Goal {
  readonly targets: ReadonlySet<FindingKind>;
  /** Cautions that may take their place, where not everything can be had. */
  readonly mayLeave: ReadonlySet<FindingKind>;
  readonly axis: 0 | 1;
  readonly lowMm: number;
  readonly highMm: number;
  /** Where the CG would rather be: short of the dangerous limit. */
  readonly reserved: { readonly lowMm: number; readonly highMm: number };
}

const ALONG: readonly FindingKind[] = [
  'tail-heavy',
  'behind-neutral-point',
  'margin-tiny',
  'nose-heavy',
  'margin-under',
  'margin-over',
];
const HARD: readonly FindingKind[] = ['tail-heavy', 'behind-neutral-point', 'margin-tiny', 'nose-heavy'];

/** The CG is brought so far ahead of the aft limit where there is room: a tenth of the band, at most 3 mm. */
const RESERVE_SHARE = 0.1;
const MOST_RESERVE_MM = 3;

/** What must be brought about lengthwise, what is wished for first; empty when nothing is wrong there. */
export function goalsAlong({ band, margin, findings }: Judgement): readonly Goal[] {
  if (!findings.some(({ kind }) => ALONG.includes(kind))) return [];
  const estimated = margin.status === 'estimated' ? margin : null;
  const at = (pct: number) =>
    estimated ? estimated.neutralPointMm - (pct / 100) * estimated.macMm : Number.NaN;
  const leastPct = Math.max(TINY_MARGIN_PCT, estimated?.leastWantedPct ?? 0);
  const goal = (aftPct: number, mostPct: number | null, kinds: readonly FindingKind[]): Goal | null => {
    const forward = Math.max(
      band?.forwardMm ?? Number.NEGATIVE_INFINITY,
      estimated && mostPct !== null ? at(mostPct) : Number.NEGATIVE_INFINITY,
    );
    const aft = Math.min(
      band?.aftMm ?? Number.POSITIVE_INFINITY,
      estimated ? at(aftPct) : Number.POSITIVE_INFINITY,
    );
    return forward < aft ? between(forward, aft, kinds) : null;
  };
  const wished = goal(leastPct, estimated?.mostWantedPct ?? null, ALONG);
  // Where not everything can be had, at least what is dangerous must go; aft of where it was it then may not be.
  const dangerous = findings.some(({ kind }) => HARD.includes(kind));
  const hard = dangerous ? goal(TINY_MARGIN_PCT, null, HARD) : null;
  return [wished, hard].filter((bounds) => bounds !== null);
}

function between(lowMm: number, highMm: number, kinds: readonly FindingKind[]): Goal {
  const wide = Number.isFinite(lowMm) ? (highMm - lowMm) * RESERVE_SHARE : MOST_RESERVE_MM;
  const reserveMm = Math.max(CERTAIN_MM, Math.min(MOST_RESERVE_MM, wide));
  return {
    targets: new Set(kinds),
    mayLeave: new Set(kinds.includes('margin-over') ? [] : (['margin-over'] as const)),
    axis: 0,
    lowMm,
    highMm,
    reserved: { lowMm: lowMm + CERTAIN_MM, highMm: highMm - reserveMm },
  };
}

/** What must be brought about sideways; null when nothing is wrong there. */
export function goalAcross({ lateralLimitMm, findings }: Judgement): Goal | null {
  if (lateralLimitMm === null || !findings.some(({ kind }) => kind === 'lateral')) return null;
  const limits = { lowMm: -lateralLimitMm, highMm: lateralLimitMm };
  const inner = lateralLimitMm - Math.min(CERTAIN_MM, lateralLimitMm / 4);
  return {
    targets: new Set(['lateral']),
    mayLeave: new Set(),
    axis: 1,
    ...limits,
    reserved: { lowMm: -inner, highMm: inner },
  };
}

/** Grown by less than this is the same: rounding of what was certified, mm or % MAC. */
const SAME = 0.05;
/** What is not aimed at may grow by this share while it stays as severe: with less mass all offsets grow. */
const GROWN_SHARE = 0.25;

/** Whether what was aimed at is gone, and nothing else has come or grown. */
export function mends(
  before: Judgement,
  after: Judgement,
  { targets, mayLeave }: Pick<Goal, 'targets' | 'mayLeave'>,
): boolean {
  return after.findings.every((finding) => {
    if (targets.has(finding.kind)) return false;
    if (mayLeave.has(finding.kind) && finding.severity === 'caution') return true;
    const was = before.findings.find(({ kind }) => kind === finding.kind);
    return was !== undefined && noWorse(was, finding);
  });
}

/** Whether a finding has not grown. */
function noWorse(was: Finding, is: Finding): boolean {
  if (compareSeverity(is.severity, was.severity) < 0) return false;
  // What does not fit is compared problem by problem, by whoever tries.
  if (is.kind === 'fit') return true;
  const share = ALONG.includes(is.kind) ? 0 : GROWN_SHARE;
  return sizeOf(is) <= sizeOf(was) * (1 + share) + SAME;
}

function sizeOf(finding: Finding): number {
  switch (finding.kind) {
    case 'tail-heavy':
    case 'nose-heavy':
      return Math.abs(finding.outsideMm);
    case 'behind-neutral-point':
    case 'margin-tiny':
    case 'margin-under':
    case 'margin-over':
      return Math.abs(finding.byMm);
    case 'band-behind-neutral-point':
      return finding.byMm;
    case 'lateral':
      return Math.abs(finding.offsetMm);
    case 'fit':
    case 'power':
    case 'no-mass':
    case 'mass-unknown':
    case 'no-band':
    case 'not-finite':
    case 'loads-unchecked':
    case 'fit-unchecked':
    case 'margin-unchecked':
      return 0;
  }
}
