import { midSentence } from '../document/inWords';
import type { Aircraft } from '../document/types';
import type { Finding, Judgement } from '../judgement/types';
import { withPower } from '../judgement/withPower';
import { headAndCause } from '../words/headline';
import type { Say } from '../words/say';
import { shortened } from './dimensions';

/** Outside the band by however little, a fault that cannot be built or flown, or something that nobody has checked. */
const blocks = ({ kind, severity }: Finding): boolean =>
  severity === 'bad-aft' || severity === 'bad' || severity === 'unknown' || kind === 'nose-heavy';

/** What has not been checked yet, by its finding. */
export const unchecked = {
  'loads-unchecked': 'other load states are not checked',
  'fit-unchecked': 'the fit is not checked',
  'margin-unchecked': 'the margin is not checked',
} as const;

function reason(aircraft: Aircraft, judgement: Judgement, finding: Finding, say: Say): string {
  const { kind } = finding;
  if (kind in unchecked) return unchecked[kind as keyof typeof unchecked];
  const { headline } = headAndCause(aircraft, { ...judgement, findings: [finding] }, say);
  const bare = headline.replace(/^(Do not fly: |In the (estimated )?band, but |No band yet, and )/, '');
  return midSentence(kind === 'no-band' ? 'No target band to hold it against' : bare);
}

/** What stands in the way of a flight, the wiring with it, the worst first; empty where the bench found nothing that does. */
export const blockingReasons = (aircraft: Aircraft, judgement: Judgement, say: Say): readonly string[] =>
  withPower(aircraft, judgement)
    .findings.filter(blocks)
    .map((finding) => reason(aircraft, judgement, finding, say));

/** The banner has room for two lines, and a reason may quote a name of any length: then each is cut. */
const LONGEST = 165;
const LONGEST_CUT = 70;

/** "Not ready to fly: tail-heavy by 12 mm, tanks dry; and 2 more"; null where nothing stands in the way. */
export function bannerOf(reasons: readonly string[]): string | null {
  const whole = bannerText(reasons);
  return whole === null || whole.length <= LONGEST
    ? whole
    : bannerText(reasons.map((each) => shortened(each, LONGEST_CUT)));
}

function bannerText([worst, ...others]: readonly string[]): string | null {
  if (worst === undefined) return null;
  const more =
    others.length > 1 ? `; and ${others.length} more` : others.length === 1 ? `; ${others[0]}` : '';
  return `Not ready to fly: ${worst}${more}`;
}

/** To be said on every page: it must never be taken for an approval. */
export const NO_APPROVAL =
  'A calculation, no approval: the national association, the site’s rules and an experienced inspector decide.';
