import { stepsDown, stepsUp } from '../../engine/geometry/wholeSteps';
import { bodies } from '../airframe/bodies';
import { notFiniteWords } from '../balance/finite';
import { listed } from '../document/inWords';
import { shownText } from '../document/names';
import type { Aircraft } from '../document/types';
import type { CgPoint, Finding, FindingKind, Judgement } from '../judgement/types';
import { formatNumber } from '../units';
import { fitCause, fitCount } from './fitSummary';
import { noBandWords } from './marginWords';
import { momentWords } from './momentWords';
import { powerCount, powerSentence } from './powerWords';
import { fineStation, lengthUp, type Say } from './say';

/** One short sentence, and one that says why. */
export interface HeadAndCause {
  readonly headline: string;
  readonly cause: string;
}

/** "Do not fly: tail-heavy by 12 mm, tanks dry", and why, of the worst finding. */
export function headAndCause(aircraft: Aircraft, judgement: Judgement, say: Say): HeadAndCause {
  const [worst] = judgement.findings.filter(({ kind }) => !isPending(kind));
  const pending = judgement.findings.filter(({ kind }) => isPending(kind));
  if (!worst) return allWell(aircraft, judgement, pending, say);
  const head = headOf(aircraft, judgement, worst, say);
  return { headline: head.headline, cause: head.cause };
}

/** Whether it is a check that is not done yet: never the headline. */
export const isPending = (kind: FindingKind) =>
  kind === 'loads-unchecked' || kind === 'fit-unchecked' || kind === 'margin-unchecked';

/** "In the band", "In the estimated band". */
const within = ({ band }: Judgement) => (band?.from === 'estimate' ? 'In the estimated band' : 'In the band');

const burns = ({ states }: Judgement) => states.some((state) => state.burns);

function allWell(
  aircraft: Aircraft,
  judgement: Judgement,
  pending: readonly Finding[],
  say: Say,
): HeadAndCause {
  const is = (kind: FindingKind) => pending.some((finding) => finding.kind === kind);
  const { margin } = judgement;
  const causes = [
    elsewhere(aircraft, judgement, say),
    is('loads-unchecked') && 'Not checked in other load states yet.',
    is('margin-unchecked') && margin.status === 'unknown' && `The margin is ${margin.why}.`,
    is('fit-unchecked') && 'The fit is not checked yet.',
  ];
  const shown = is('loads-unchecked') ? ' as shown' : '';
  const { statedFor } = judgement;
  const when = statedFor ? momentWords(aircraft, statedFor) : burns(judgement) && 'full to dry';
  return {
    headline: `${within(judgement)}${shown}${when ? `, ${when}` : ''}`,
    cause: causes.filter(Boolean).join(' '),
  };
}

/** Where the CG goes in the load states that the limits were not stated for; empty while it stays between them. */
function elsewhere(aircraft: Aircraft, { statedFor, foremost, aftmost }: Judgement, say: Say): string {
  if (!statedFor) return '';
  const words = [aftmost, foremost].flatMap((point) => {
    if (!point?.outsideMm) return [];
    const { outsideMm } = point;
    const way = outsideMm > 0 ? 'aft' : 'ahead';
    return `${lengthUp(Math.abs(outsideMm), say)} ${way} of them (${momentWords(aircraft, point)})`;
  });
  if (words.length === 0) return '';
  return `The limits were stated for this load state alone; in others it goes ${words.join(' and ')}.`;
}

function headOf(aircraft: Aircraft, judgement: Judgement, finding: Finding, say: Say): HeadAndCause {
  const when = (at: CgPoint) => {
    const words = momentWords(aircraft, at);
    return words ? `, ${words}` : '';
  };
  switch (finding.kind) {
    case 'tail-heavy':
    case 'nose-heavy':
      return outside(aircraft, judgement, finding, say, when(finding.at));
    case 'behind-neutral-point':
    case 'margin-tiny':
    case 'margin-under':
    case 'margin-over':
      return marginHead(judgement, finding, say, when(finding.at));
    case 'band-behind-neutral-point':
      return {
        headline: `${within(judgement)}, but do not trust this band`,
        cause: `Its aft limit is ${lengthUp(finding.byMm, say)} behind the estimated neutral point.`,
      };
    case 'lateral': {
      const side = finding.offsetMm > 0 ? 'right' : 'left';
      return {
        headline: `${stands(judgement)}the ${side} wing is heavy`,
        cause: `CG ${lengthUp(Math.abs(finding.offsetMm), say)} ${side}${when(finding.at)}; at most ${say.length(finding.limitMm)}.`,
      };
    }
    case 'fit': {
      const [first] = finding.problems;
      const cause = first ? fitCause(first, (mm) => lengthUp(mm, say)) : '';
      const bad = finding.severity === 'bad';
      const said = bad ? `does not fit: ${fitCount(finding.problems)}` : fitCount(finding.problems);
      return { headline: `${stands(judgement)}${said}`, cause };
    }
    case 'power': {
      const [first] = finding.problems;
      const said = `the wiring ${finding.severity === 'bad' ? 'does not hold' : 'asks for a look'}`;
      return {
        headline: `${stands(judgement)}${said}: ${powerCount(finding.problems)}`,
        cause: first ? powerSentence(first) : '',
      };
    }
    case 'mass-unknown': {
      const names = finding.names.map((name) => `“${shownText(name)}”`);
      const several = names.length > 1;
      return {
        headline: several
          ? `The masses of ${names.length} things are not known`
          : `The mass of ${names[0]} is not known`,
        cause: `${several ? `${listed(names.slice(0, 3))}${names.length > 3 ? ' and others' : ''}: until` : 'Until'} weighed or found from a weighing, nothing else counts.`,
      };
    }
    case 'no-mass':
      return {
        headline: 'Nothing aboard weighs anything yet',
        cause: 'Give the airframe its mass, or add a part.',
      };
    case 'no-band':
      return {
        headline: `The CG is at station ${shownStation(judgement, say)}`,
        cause: noBandWords(aircraft),
      };
    case 'not-finite':
      return {
        headline: 'The balance cannot be worked out',
        cause: notFiniteWords({ bodies: bodies(aircraft) }),
      };
    case 'loads-unchecked':
    case 'fit-unchecked':
    case 'margin-unchecked':
      return allWell(aircraft, judgement, [finding], say);
  }
}

/** "In the band, but " where it is; lesser faults must not sound like the balance, nor hide that it does not hold. */
function stands(judgement: Judgement): string {
  const is = (...kinds: readonly FindingKind[]) =>
    judgement.findings.some(({ kind }) => kinds.includes(kind));
  if (is('tail-heavy')) return 'Tail-heavy, and ';
  if (is('nose-heavy')) return 'Nose-heavy, and ';
  if (is('mass-unknown', 'no-mass')) return 'Not all masses are known, and ';
  return judgement.band ? `${within(judgement)}, but ` : 'No band yet, and ';
}

function shownStation({ shown }: Judgement, say: Say): string {
  return shown ? say.station(shown.full.cgMm[0]) : '–';
}

function outside(
  aircraft: Aircraft,
  judgement: Judgement,
  { kind, outsideMm, at }: Extract<Finding, { kind: 'tail-heavy' | 'nose-heavy' }>,
  say: Say,
  when: string,
): HeadAndCause {
  const { band, findings } = judgement;
  const tail = kind === 'tail-heavy';
  const of = band?.from === 'estimate' ? ' of the estimated band' : '';
  const by = lengthUp(Math.abs(outsideMm), say);
  const headline = `${tail ? 'Do not fly: tail-heavy' : 'Nose-heavy'} by ${by}${of}${when}`;
  const nose = findings.find((other) => other.kind === 'nose-heavy');
  if (tail && nose?.kind === 'nose-heavy') {
    const moment = momentWords(aircraft, nose.at);
    const cause = `And nose-heavy by ${lengthUp(-nose.outsideMm, say)}${moment ? `, ${moment}` : ''}: the CG travels farther than the band is long.`;
    return { headline, cause };
  }
  const limit = band
    ? `${tail ? 'aft' : 'forward'} limit ${fineStation(tail ? band.aftMm : band.forwardMm, say)}`
    : '';
  // One that is inside as far as it was found is outside by what is not certain.
  const doubt =
    tail && band && at.cgMm[0] <= band.aftMm ? `, certain to ${lengthUp(at.maybeAftMm, say)}` : '';
  return { headline, cause: `CG at ${fineStation(at.cgMm[0], say)}${doubt}, ${limit}.` };
}

/** A margin is never said to be more than it is, nor its ± less: "9 % MAC", "9 ± 6 % MAC". */
export function marginFigure(pct: number, plusMinusPct = 0): string {
  const wholePlusMinus = stepsUp(plusMinusPct);
  const plusMinus = wholePlusMinus > 0 ? ` ± ${wholePlusMinus}` : '';
  return `${formatNumber(stepsDown(pct), 0)}${plusMinus} % MAC`;
}

function marginHead(
  judgement: Judgement,
  finding: Extract<Finding, { marginPct: number }>,
  say: Say,
  when: string,
): HeadAndCause {
  const { kind, marginPct, wantedPct, wanted, byMm } = finding;
  const margin = `margin ${marginFigure(marginPct)} (estimate)`;
  const asked = `${Math.round(wantedPct * 10) / 10} %`;
  switch (kind) {
    case 'behind-neutral-point': {
      const { margin: judged } = judgement;
      const behindMm = judged.status === 'estimated' ? finding.at.cgMm[0] - judged.neutralPointMm : byMm;
      return {
        headline: `Do not fly: CG ${lengthUp(behindMm, say)} behind the estimated neutral point${when}`,
        cause: 'Behind it the aircraft is unstable, whatever band is stated.',
      };
    }
    case 'margin-tiny':
      return {
        headline: `Hardly stable: ${margin}${when}`,
        cause: `At least ${asked} is ${wanted ? 'wanted' : 'usual for this kind'}.`,
      };
    case 'margin-under':
      return {
        headline: `${judgement.band ? `${within(judgement)}, but ` : 'No band yet, and '}${margin}${when}`,
        cause: `At least ${asked} is ${wanted ? 'wanted' : 'usual for this kind'}.`,
      };
    case 'margin-over':
      return {
        headline: `${judgement.band ? `${within(judgement)}, but ` : 'No band yet, and '}margin ${stepsUp(marginPct)} % MAC (estimate)${when}`,
        cause: `At most ${asked} is wanted.`,
      };
  }
}
