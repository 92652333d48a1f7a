import type { Aircraft } from '../document/types';
import { BAND_BEHIND_MM, FAR_OFF_CENTRE, SLIGHTLY_SHARE, TINY_MARGIN_PCT, TOUCH_PCT } from './limits';
import type { CgPoint, Finding, JudgedBand, Judgement, MarginJudgement } from './types';

/** What the CG against the band is to be blamed for. */
export function bandFindings(
  band: JudgedBand | null,
  foremost: CgPoint | null,
  aftmost: CgPoint | null,
): readonly Finding[] {
  if (!foremost || !aftmost) return [];
  if (!band) return [{ kind: 'no-band', severity: 'unknown' }];
  const found: Finding[] = [];
  if (aftmost.outsideMm !== null && aftmost.outsideMm > 0) {
    found.push({ kind: 'tail-heavy', severity: 'bad-aft', outsideMm: aftmost.outsideMm, at: aftmost });
  }
  if (foremost.outsideMm !== null && foremost.outsideMm < 0) {
    const slight = -foremost.outsideMm <= SLIGHTLY_SHARE * (band.aftMm - band.forwardMm);
    found.push({
      kind: 'nose-heavy',
      severity: slight ? 'caution' : 'bad',
      outsideMm: foremost.outsideMm,
      at: foremost,
    });
  }
  return found;
}

/** What the estimated static margin is to be blamed for, with a band or without. */
export function marginFindings(margin: MarginJudgement, band: JudgedBand | null): readonly Finding[] {
  if (margin.status === 'unknown') {
    switch (margin.why) {
      case 'not finite':
        return [{ kind: 'not-finite', severity: 'bad' }];
      case 'not checked yet':
      case 'not checked':
        return [{ kind: 'margin-unchecked', severity: 'unknown' }];
      case 'no estimate':
      case 'out of date':
      case 'no CG':
        return [];
    }
  }
  const { least, most, leastWantedPct, mostWantedPct, wanted, neutralPointMm, macMm } = margin;
  const found: Finding[] = [];
  const say = (
    kind: 'behind-neutral-point' | 'margin-tiny' | 'margin-under' | 'margin-over',
    severity: Finding['severity'],
    at: typeof least,
    wantedPct: number,
  ) => {
    const byMm = ((wantedPct - at.marginPct) / 100) * macMm;
    const { marginPct } = at;
    // Nobody asked for what is only just not tiny.
    const asked = wanted && (wantedPct === leastWantedPct || wantedPct === mostWantedPct);
    found.push({ kind, severity, marginPct, wantedPct, wanted: asked, byMm, at } as Finding);
  };
  const leastPct = Math.max(TINY_MARGIN_PCT, leastWantedPct);
  if (least.marginPct < 0) say('behind-neutral-point', 'bad-aft', least, leastPct);
  else if (least.marginPct < TINY_MARGIN_PCT) say('margin-tiny', 'bad', least, leastPct);
  // A band that the margin itself makes says so already.
  else if (band?.from !== 'estimate' && least.marginPct < leastWantedPct - TOUCH_PCT)
    say('margin-under', 'caution', least, leastPct);
  if (band?.from !== 'estimate' && mostWantedPct !== null && most.marginPct > mostWantedPct + TOUCH_PCT)
    say('margin-over', 'caution', most, mostWantedPct);
  const behindMm = band?.from === 'stated' ? band.aftMm - neutralPointMm : 0;
  if (behindMm > BAND_BEHIND_MM) {
    found.push({ kind: 'band-behind-neutral-point', severity: 'caution', byMm: behindMm });
  }
  return found;
}

/** What the sideways balance is to be blamed for. */
export function lateralFindings(limitMm: number | null, mostLateral: CgPoint | null): readonly Finding[] {
  if (limitMm === null || !mostLateral) return [];
  const offsetMm = mostLateral.cgMm[1];
  if (Math.abs(offsetMm) <= limitMm) return [];
  const far = Math.abs(offsetMm) > FAR_OFF_CENTRE * limitMm;
  return [{ kind: 'lateral', severity: far ? 'bad' : 'caution', offsetMm, limitMm, at: mostLateral }];
}

/** What does not fit in flight, or that nobody has looked yet. */
export function fitFindings(fit: Judgement['fit']): readonly Finding[] {
  if (!fit) return [{ kind: 'fit-unchecked', severity: 'unknown' }];
  if (fit.length === 0) return [];
  const severity = fit.some((problem) => problem.severity === 'bad') ? 'bad' : 'caution';
  return [{ kind: 'fit', severity, problems: fit }];
}

/** What is aboard with a mass that nobody knows; structure only while its shapes are in the sum. */
export function massFindings({ parts, tanks, structure, bareAirframe }: Aircraft): readonly Finding[] {
  const replaced = bareAirframe?.use === 'replace';
  const things = [...(replaced ? [] : structure), ...tanks, ...parts];
  const names = things.flatMap(({ massFrom, name }) => (massFrom === 'unknown' ? [name] : []));
  const all = replaced && bareAirframe.massFrom === 'unknown' ? ['Bare airframe', ...names] : names;
  return all.length > 0 ? [{ kind: 'mass-unknown', severity: 'unknown', names: all }] : [];
}
