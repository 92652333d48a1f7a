import { tipMassForLateral } from '../../engine/balance/ballast';
import type { BandFit } from '../../engine/balance/band';
import { remedyFor } from '../advice/remedy';
import { aircraftExtent } from '../airframe/extent';
import { switchesOf } from '../airframe/loadSwitches';
import type { Balance } from '../balance/balance';
import { notFiniteWords } from '../balance/finite';
import type { Aircraft } from '../document/types';
import type { LoadEnvelope } from '../loads/loadStates';
import { loadWords } from './loadWords';
import { marginWords, noBandWords } from './marginWords';
import type { Say } from './say';

export type { Say } from './say';

/** The answer in plain sentences. */
export interface Verdict {
  readonly tone: 'good' | 'caution' | 'bad' | 'unknown';
  readonly headline: string;
  readonly detail: string;
}

/** Less than this is not worth a word, mm. */
const WORTH_SAYING_MM = 0.05;

const percent = (fraction: number) => `${Math.round(fraction * 100)} %`;

/** A run of the burn, from more to less: "full to dry", "41 % fuel to dry". */
function span(from: number, to: number, liquid: string): string {
  if (from > 0.995 && to < 0.005) return 'full to dry';
  if (from - to < 0.005)
    return from > 0.995 ? 'when full' : from < 0.005 ? 'when dry' : `at ${percent(from)} ${liquid}`;
  const first = from > 0.995 ? 'full' : `${percent(from)} ${liquid}`;
  return `from ${first} to ${to < 0.005 ? 'dry' : percent(to)}`;
}

function travelSentence({ travel, band, fit }: Balance, say: Say, liquid: string): string {
  const [full, dry] = [travel[0], travel.at(-1)];
  if (!full || !dry || !band || !fit) return '';
  const nearer =
    fit.aftMarginMm < fit.forwardMarginMm
      ? `${say.length(fit.aftMarginMm)} short of the aft limit`
      : `${say.length(fit.forwardMarginMm)} behind the forward limit`;
  if (travel.length < 2) return `The CG is ${nearer}.`;
  const length = fit.aftmost.cgMm[0] - fit.foremost.cgMm[0];
  if (length < WORTH_SAYING_MM) return `The ${liquid} does not move the CG; it is ${nearer}.`;
  const byMm = dry.cgMm[0] - full.cgMm[0];
  const way =
    Math.abs(byMm) < length * 0.98
      ? `wanders over ${say.length(length)}`
      : `travels ${say.length(Math.abs(byMm))} ${byMm > 0 ? 'aft' : 'forward'}`;
  return `The CG ${way} as the tanks empty and stays ${nearer}.`;
}

function outsideHeadline(fit: BandFit, { travel, bandFrom }: Balance, say: Say, liquid: string): string {
  const against = bandFrom === 'estimate' ? ' of the estimated band' : '';
  if (fit.where === 'both') {
    return `Nose-heavy by ${say.length(-fit.forwardMarginMm)} and tail-heavy by ${say.length(-fit.aftMarginMm)}${against} in one flight.`;
  }
  const tail = fit.where === 'tail-heavy';
  const by = say.length(tail ? -fit.aftMarginMm : -fit.forwardMarginMm);
  const words = fit.outside.map(({ from, to }) => span(from, to, liquid)).join(' and ');
  return `${tail ? 'Tail-heavy' : 'Nose-heavy'} by ${by}${against}${travel.length > 1 ? `, ${words}` : ''}.`;
}

function remedySentence(aircraft: Aircraft, balance: Balance, say: Say): string {
  const remedy = remedyFor(aircraft, balance);
  if (!remedy) return 'No single move and no ballast at either end brings every fuel state into the band.';
  if (remedy.by === 'ballast') {
    return `No move of one part will do; ${say.mass(remedy.massG)} of ballast at station ${say.station(remedy.stationMm)} would just do.`;
  }
  const byMm = remedy.toMm - remedy.fromMm;
  return `Moving “${remedy.item.name}” ${say.length(Math.abs(byMm))} ${byMm > 0 ? 'aft' : 'forward'}, to station ${say.station(remedy.toMm)}, would just do.`;
}

/** The sideways sentence, judged at the worst point of the travel; empty when level within the tolerance. */
function lateralSentence(aircraft: Aircraft, balance: Balance, say: Say): string {
  let worst = balance.travel[0];
  for (const point of balance.travel)
    if (worst && Math.abs(point.cgMm[1]) > Math.abs(worst.cgMm[1])) worst = point;
  if (!worst || Math.abs(worst.cgMm[1]) <= aircraft.lateralToleranceMm) return '';
  const { minMm, maxMm } = aircraftExtent(aircraft);
  const halfSpanMm = Math.max(-minMm[1], maxMm[1]);
  const tip = say.mass(tipMassForLateral(worst.massG, worst.cgMm[1], halfSpanMm));
  const [heavy, light] = worst.cgMm[1] > 0 ? ['right', 'left'] : ['left', 'right'];
  return `The ${heavy} wing is heavy; ${tip} at the ${light} tip would level it.`;
}

/**
 * Says in plain words whether the CG stays in the band, by how much, and what would mend it. With the extremes over all
 * load states it also says which of them leaves the band, and names the ones at either end.
 */
export function verdict(
  aircraft: Aircraft,
  balance: Balance,
  say: Say,
  envelope: LoadEnvelope | null = null,
): Verdict {
  const own = verdictAsLoaded(aircraft, balance, say);
  if (!envelope || switchesOf(aircraft).length === 0 || !balance.cgMm) return own;
  const { warning, ends } = loadWords(aircraft, envelope, balance.band, say);
  if (warning && balance.fit?.where === 'inside') {
    return {
      tone: 'bad',
      headline: 'In the band as loaded now, but not always.',
      detail: sentences(warning, own.detail),
    };
  }
  return { ...own, detail: sentences(own.detail, ends) };
}

function verdictAsLoaded(aircraft: Aircraft, balance: Balance, say: Say): Verdict {
  const liquid = aircraft.fuel?.use === 'dump' ? 'water' : 'fuel';
  if (!balance.finite) {
    const headline = 'The balance cannot be worked out.';
    return { tone: 'bad', headline, detail: notFiniteWords(balance) };
  }
  if (!balance.cgMm) {
    return {
      tone: 'unknown',
      headline: 'Nothing aboard weighs anything yet.',
      detail: 'Give the airframe its mass, or add a part.',
    };
  }
  const lateral = lateralSentence(aircraft, balance, say);
  const { warning, margin, unstable } = marginWords(balance, liquid, say.length);
  const { bandFrom } = balance;
  const fit = bandFrom === 'estimate' && !balance.estimateFresh ? null : balance.fit;
  if (!fit) {
    return {
      tone: unstable ? 'bad' : 'unknown',
      headline: `The CG is at station ${say.station(balance.cgMm[0])}.`,
      detail: sentences(noBandWords(aircraft), margin, lateral),
    };
  }
  if (fit.where === 'inside') {
    const within = bandFrom === 'estimate' ? 'In the estimated band' : 'In the band';
    const burns = balance.travel.length > 1;
    return {
      tone: unstable ? 'bad' : lateral || warning ? 'caution' : 'good',
      headline: unstable
        ? `${within}, but behind the estimated neutral point.`
        : `${within}${burns ? ', full to dry' : ''}.`,
      detail: sentences(
        warning || travelSentence(balance, say, liquid),
        margin,
        lateral || (margin ? '' : 'Level from left to right.'),
      ),
    };
  }
  return {
    tone: 'bad',
    headline: outsideHeadline(fit, balance, say, liquid),
    detail: sentences(warning || remedySentence(aircraft, balance, say), margin, lateral),
  };
}

const sentences = (...all: readonly string[]) => all.filter(Boolean).join(' ');

/** Dead weight aboard, g: every part whose role is ballast. */
export const ballastG = (aircraft: Aircraft): number =>
  aircraft.parts.reduce((sum, part) => (part.role === 'ballast' ? sum + part.massG : sum), 0);
