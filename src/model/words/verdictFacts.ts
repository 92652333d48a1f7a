import type { Aircraft } from '../document/types';
import { TINY_MARGIN_PCT, TOUCH_PCT } from '../judgement/limits';
import { farthestOut } from '../judgement/states';
import type { CgPoint, Judgement, Severity } from '../judgement/types';
import { powerProblems } from '../power/powerProblems';
import { LEAST_SHOWN_MM } from '../units';
import { sureWords } from './certaintyWords';
import { fitCount } from './fitSummary';
import { marginFigure } from './headline';
import { momentWords } from './momentWords';
import { powerCount } from './powerWords';
import { fineStation, lengthDown, lengthUp, type Say } from './say';

/** How a verdict or a fact looks. `danger` is the tail-heavy side's alone. */
export type Tone = 'danger' | 'bad' | 'caution' | 'unknown' | 'good';

export const toneOf: Readonly<Record<Severity, Tone>> = {
  'bad-aft': 'danger',
  bad: 'bad',
  caution: 'caution',
  unknown: 'unknown',
  good: 'good',
};

export type FactKey =
  | 'cg-full'
  | 'cg-dry'
  | 'band'
  | 'travel'
  | 'margin'
  | 'sideways'
  | 'worst'
  | 'fit'
  | 'power'
  | 'mass'
  | 'sure';

/** One figure of the answer, to be shown with its label; the key says which working it opens. */
export interface Fact {
  readonly key: FactKey;
  readonly label: string;
  readonly value: string;
  /** What it is held against, in a few words; may be empty. */
  readonly note: string;
  readonly tone: Tone;
}

/** What the facts need besides the judgement. */
export interface ShownMass {
  /** Ready to fly at the fuel shown, g. */
  readonly massG: number;
  /** 95 %, g; null where it is not known. */
  readonly plusMinusG: number | null;
}

/** The figures behind the headline, in the order that they are read. */
export function verdictFacts(
  aircraft: Aircraft,
  judgement: Judgement,
  say: Say,
  mass: ShownMass | null,
): readonly Fact[] {
  return [
    ...cgFacts(judgement, say),
    bandFact(aircraft, judgement, say),
    ...travelFact(judgement, say),
    marginFact(judgement),
    sidewaysFact(judgement, say),
    ...worstFact(aircraft, judgement, say),
    fitFact(judgement),
    ...powerFact(aircraft),
    ...massFact(mass, say),
    ...sureFact(judgement),
  ];
}

/** The tone of the findings of some kinds; good where there are none. */
function toneOfKinds({ findings }: Judgement, ...kinds: readonly string[]): Tone {
  const worst = findings.find(({ kind }) => kinds.includes(kind));
  return worst ? toneOf[worst.severity] : 'good';
}

function cgFacts(judgement: Judgement, say: Say): readonly Fact[] {
  const { shown } = judgement;
  if (!shown) return [];
  const at = (key: 'cg-full' | 'cg-dry', label: string, point: CgPoint): Fact => ({
    key,
    label,
    value: fineStation(point.cgMm[0], say),
    note: shown.flies ? againstBand(judgement, point, say) : 'on the stand, not judged',
    tone: shown.flies ? pointTone(judgement, point) : 'unknown',
  });
  return shown.burns
    ? [at('cg-full', 'CG full', shown.full), at('cg-dry', 'CG dry', shown.dry)]
    : [at('cg-full', 'CG', shown.full)];
}

function pointTone(judgement: Judgement, { outsideMm, cgMm }: CgPoint): Tone {
  if (outsideMm === null || !Number.isFinite(cgMm[0])) return 'unknown';
  // Limits that hold for another load state are shown for this one, and judged there.
  if (judgement.statedFor && outsideMm !== 0) return 'caution';
  if (outsideMm > 0) return 'danger';
  return outsideMm < 0 ? toneOfKinds(judgement, 'nose-heavy') : 'good';
}

/** "5.9 mm behind the forward limit", "2.1 mm aft of the band". */
function againstBand({ band }: Judgement, { outsideMm, cgMm }: CgPoint, say: Say): string {
  if (!band || outsideMm === null) return '';
  if (outsideMm > 0) return `${lengthUp(outsideMm, say)} aft of the band`;
  if (outsideMm < 0) return `${lengthUp(-outsideMm, say)} ahead of the band`;
  const [toForward, toAft] = [cgMm[0] - band.forwardMm, band.aftMm - cgMm[0]];
  return toAft < toForward
    ? `${lengthDown(Math.max(0, toAft), say)} short of the aft limit`
    : `${lengthDown(Math.max(0, toForward), say)} behind the forward limit`;
}

function bandFact(aircraft: Aircraft, judgement: Judgement, say: Say): Fact {
  const { band, statedFor } = judgement;
  const { targetBand, referencePoints } = aircraft;
  const fact = { key: 'band', label: 'Band' } as const;
  if (!band) return { ...fact, value: 'none', note: '', tone: 'unknown' };
  const from = referencePoints.find(({ positionMm }) => positionMm[0] === say.fromMm)?.name;
  const way = targetBand?.by === 'mac' ? 'stated in % MAC' : 'stated';
  const stated = statedFor ? `${way} for ${momentWords(aircraft, statedFor)}` : way;
  return {
    ...fact,
    value: `${bareFigure(fineStation(band.forwardMm, say))}–${fineStation(band.aftMm, say)}`,
    note: [from ? `from ${from}` : 'from the datum', band.from === 'estimate' ? 'an estimate' : stated].join(
      ', ',
    ),
    tone: toneOfKinds(judgement, 'band-behind-neutral-point'),
  };
}

/** A figure without the unit that the next one names. */
const bareFigure = (words: string) => words.replace(/[^\d"′″]+$/, '');

function travelFact({ shown }: Judgement, say: Say): readonly Fact[] {
  if (!shown?.burns) return [];
  const lengthMm = shown.aftmost.cgMm[0] - shown.foremost.cgMm[0];
  const byMm = shown.dry.cgMm[0] - shown.full.cgMm[0];
  const straight = Math.abs(byMm) >= lengthMm * 0.98;
  const note = lengthMm < LEAST_SHOWN_MM ? '' : straight ? (byMm > 0 ? 'aft' : 'forward') : 'to and fro';
  const value = lengthMm < LEAST_SHOWN_MM ? 'none' : lengthUp(lengthMm, say);
  return [{ key: 'travel', label: 'Travel', value, note, tone: 'good' }];
}

const MARGIN_KINDS = ['behind-neutral-point', 'margin-tiny', 'margin-under', 'margin-over'] as const;

function marginFact(judgement: Judgement): Fact {
  const { margin } = judgement;
  const fact = { key: 'margin', label: 'Margin, estimated' } as const;
  if (margin.status === 'unknown') return { ...fact, value: 'not known', note: margin.why, tone: 'unknown' };
  const { least, most, leastWantedPct, mostWantedPct, wanted } = margin;
  const found = toneOfKinds(judgement, ...MARGIN_KINDS);
  // Where the wish makes the band it is the CG that is blamed; its margin is no better for that.
  const over = mostWantedPct !== null && most.marginPct > mostWantedPct + TOUCH_PCT;
  const missed = least.marginPct < leastWantedPct - TOUCH_PCT || over;
  const tone = found === 'good' && missed ? 'caution' : found;
  const doubtful = tone === 'good' ? doubtfulMargin(margin) : '';
  const wish = `at least ${leastWantedPct} % is ${wanted ? 'wanted' : 'usual for this kind'}`;
  return {
    ...fact,
    value: marginFigure(least.marginPct, margin.plusMinusPct),
    note: doubtful ? `${doubtful}; ${wish}` : wish,
    tone: doubtful ? 'caution' : tone,
  };
}

/** That a margin may be hardly any where the neutral point lies as far forward as its ± allows; else empty. */
function doubtfulMargin({ least, plusMinusPct }: EstimatedMargin): string {
  const leastPct = least.marginPct - plusMinusPct;
  if (leastPct >= TINY_MARGIN_PCT) return '';
  return leastPct < 0 ? 'may be behind the neutral point' : `may be as little as ${marginFigure(leastPct)}`;
}

type EstimatedMargin = Extract<Judgement['margin'], { status: 'estimated' }>;

function sidewaysFact(judgement: Judgement, say: Say): Fact {
  const { mostLateral, lateralLimitMm } = judgement;
  const fact = { key: 'sideways', label: 'Sideways' } as const;
  if (!mostLateral || !Number.isFinite(mostLateral.cgMm[1])) {
    return { ...fact, value: 'not known', note: '', tone: 'unknown' };
  }
  const offMm = mostLateral.cgMm[1];
  const level = Math.abs(offMm) < LEAST_SHOWN_MM;
  return {
    ...fact,
    value: level ? 'level' : `${lengthUp(Math.abs(offMm), say)} ${offMm > 0 ? 'right' : 'left'}`,
    note: lateralLimitMm === null ? 'not judged' : `at most ${say.length(lateralLimitMm)}`,
    tone: toneOfKinds(judgement, 'lateral'),
  };
}

/** The load state that lies farthest out, aft before forward; nothing where there is only one. */
function worstFact(aircraft: Aircraft, judgement: Judgement, say: Say): readonly Fact[] {
  const { states, loads } = judgement;
  const worst = farthestOut(judgement);
  if (!worst) return [];
  if (loads === 'unchecked') {
    const value = 'not checked yet';
    return [{ key: 'worst', label: 'Worst', value, note: '', tone: 'unknown' }];
  }
  if (states.length < 2) return [];
  return [
    {
      key: 'worst',
      label: 'Worst',
      value: momentWords(aircraft, worst),
      note: againstBand(judgement, worst, say),
      tone: pointTone(judgement, worst),
    },
  ];
}

function fitFact(judgement: Judgement): Fact {
  const { fit } = judgement;
  const fact = { key: 'fit', label: 'Fit', note: '' } as const;
  if (!fit) return { ...fact, value: 'not checked yet', tone: 'unknown' };
  const count = fitCount(fit);
  return { ...fact, value: count || 'all fits', tone: toneOfKinds(judgement, 'fit') };
}

/** Only where the wiring asks for something: the bench stays quiet about what holds. */
function powerFact(aircraft: Aircraft): readonly Fact[] {
  const problems = powerProblems(aircraft);
  const [worst] = problems ?? [];
  if (!problems || !worst) return [];
  const tone = toneOf[worst.severity];
  const value = powerCount(problems);
  return [{ key: 'power', label: 'Power', value, note: 'by the figures entered', tone }];
}

function massFact(mass: ShownMass | null, say: Say): readonly Fact[] {
  if (!mass) return [];
  const finite = Number.isFinite(mass.massG);
  return [
    {
      key: 'mass',
      label: 'Ready to fly',
      value: finite ? say.mass(mass.massG) : 'not known',
      note: mass.plusMinusG === null ? '' : `± ${say.mass(Math.ceil(mass.plusMinusG))}`,
      tone: finite ? 'good' : 'unknown',
    },
  ];
}

/** Less sure than this is worth a second look. */
const SURE_ENOUGH = 0.9;

function sureFact({ certainty, shown }: Judgement): readonly Fact[] {
  if (!certainty || certainty.probability === null) return [];
  const { probability } = certainty;
  const value = sureWords(probability, shown?.burns ?? false);
  const tone: Tone = Number.isFinite(probability)
    ? probability < SURE_ENOUGH
      ? 'caution'
      : 'good'
    : 'unknown';
  return [{ key: 'sure', label: 'How sure', value, note: '', tone }];
}
