import { TOUCH_MM } from '../../engine/balance/band';
import { compareSeverity, type Judgement } from './types';

/** How far inside the limits the CG stays over every flying load state, mm; negative outside, null without a band or a CG. */
export function spareMm({ band, foremost, aftmost }: Judgement): number | null {
  if (!band || !foremost || !aftmost) return null;
  const toAftMm = band.aftMm - (aftmost.cgMm[0] + aftmost.maybeAftMm);
  return Math.min(toAftMm, foremost.cgMm[0] - band.forwardMm);
}

/** Which of several judged aircraft is the best, and by what: the worst finding of each, else the room inside the limits. */
export interface Best {
  readonly id: string;
  readonly by: 'findings' | 'spare';
  /** Its room inside the limits, mm. */
  readonly spareMm: number | null;
}

interface Judged {
  readonly id: string;
  readonly judgement: Judgement;
}

/** Null where none may fly, where one is alone, and where nothing tells the best two apart. */
export function bestVariant(all: readonly Judged[]): Best | null {
  const ranked = [...all].sort(byMerit);
  const [first, second] = ranked;
  if (!first || !second || first.judgement.severity.startsWith('bad')) return null;
  const best = (by: Best['by']) => ({ id: first.id, by, spareMm: spareMm(first.judgement) });
  if (first.judgement.severity !== second.judgement.severity) return best('findings');
  const moreMm = (spareMm(first.judgement) ?? 0) - (spareMm(second.judgement) ?? 0);
  return moreMm > TOUCH_MM ? best('spare') : null;
}

const byMerit = (a: Judged, b: Judged): number =>
  -compareSeverity(a.judgement.severity, b.judgement.severity) ||
  (spareMm(b.judgement) ?? Number.NEGATIVE_INFINITY) - (spareMm(a.judgement) ?? Number.NEGATIVE_INFINITY) ||
  0;
