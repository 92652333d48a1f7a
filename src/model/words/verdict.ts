import type { Advice } from '../advice/advise';
import type { Remedy } from '../advice/remedy';
import { midSentence } from '../document/inWords';
import type { Aircraft } from '../document/types';
import type { Judgement } from '../judgement/types';
import { withPower } from '../judgement/withPower';
import { headAndCause } from './headline';
import type { Say } from './say';
import { type Fact, type ShownMass, type Tone, toneOf, verdictFacts } from './verdictFacts';

export type { Say } from './say';
export type { Fact, FactKey, ShownMass, Tone } from './verdictFacts';

/** One remedy: what to do, what comes of it, and the remedy itself for the button; none where nothing was found. */
export interface Fix {
  readonly label: string;
  readonly consequence: string;
  readonly remedy: Remedy | null;
}

/** The answer in words. */
export interface Verdict {
  readonly tone: Tone;
  readonly headline: string;
  /** One sentence; may be empty where all is well. */
  readonly cause: string;
  /** Null where there is nothing to mend, or before a remedy has been looked for. */
  readonly fix: Fix | null;
  readonly facts: readonly Fact[];
}

/** What the words are made of besides the judgement. */
export interface VerdictMore {
  /** What would mend it; null before that is known. */
  readonly advice?: Advice | null;
  readonly mass?: ShownMass | null;
  /** What is not checked yet is being checked now: the tone is that of what is known so far. */
  readonly checking?: boolean;
}

/** The answer in words: one headline, why, one remedy, and the figures behind it. */
export function verdict(
  aircraft: Aircraft,
  balanced: Judgement,
  say: Say,
  { advice = null, mass = null, checking = false }: VerdictMore = {},
): Verdict {
  const judgement = withPower(aircraft, balanced);
  return {
    tone: toneOf[checking ? judgement.severitySoFar : judgement.severity],
    ...headAndCause(aircraft, judgement, say),
    fix: advice && fixOf(aircraft, advice, say, judgement !== balanced),
    facts: verdictFacts(aircraft, judgement, say, mass),
  };
}

/** `wiring`: something is wrong with it, which no remedy for the balance mends. */
function fixOf(
  aircraft: Aircraft,
  { remedy, about, noMoveOfOne, searched }: Advice,
  say: Say,
  wiring: boolean,
): Fix | null {
  if (!about) return null;
  if (!remedy) return { label: 'No remedy found', consequence: searched, remedy: null };
  const { headline } = headAndCause(aircraft, remedy.result, say);
  const alone = noMoveOfOne && about === 'along' ? 'No fore-and-aft move of one unlocked part will do. ' : '';
  return {
    label: remedy.words,
    consequence: `${alone}Then: ${midSentence(headline)}${wiring ? '; the wiring apart' : ''}.`,
    remedy,
  };
}

/** Dead weight aboard, g: every part whose role is ballast. */
export const ballastG = (aircraft: Aircraft): number =>
  aircraft.parts.reduce((sum, part) => (part.role === 'ballast' ? sum + part.massG : sum), 0);
