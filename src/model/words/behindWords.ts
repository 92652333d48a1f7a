import type { Aircraft } from '../document/types';
import type { Finding, Judgement } from '../judgement/types';
import { fitCount } from './fitSummary';
import { headAndCause, isPending, marginFigure } from './headline';
import { powerCount } from './powerWords';
import { lengthUp, type Say } from './say';

/** "Do not fly: tail-heavy by 14 mm, tanks dry; also 1 wall too thin": what is said of an aircraft that is offered. */
export function verdictInBrief(aircraft: Aircraft, judgement: Judgement, say: Say): string {
  const behind = behindWords(judgement, say);
  const also = behind.length > 0 ? `; also ${behind.join(', ')}` : '';
  return `${headAndCause(aircraft, judgement, say).headline}${also}`;
}

/** What stands behind the headline of a judgement, the worst first, a few words each; empty where that says it all. */
export function behindWords({ findings }: Judgement, say: Say): readonly string[] {
  const headline = findings.find(({ kind }) => !isPending(kind));
  return findings.filter((finding) => finding !== headline).map((finding) => shortly(finding, say));
}

function shortly(finding: Finding, say: Say): string {
  switch (finding.kind) {
    case 'tail-heavy':
    case 'nose-heavy':
      return `${finding.kind} by ${lengthUp(Math.abs(finding.outsideMm), say)}`;
    case 'behind-neutral-point':
      return 'CG behind the estimated neutral point';
    case 'margin-tiny':
    case 'margin-under':
    case 'margin-over':
      return `margin ${marginFigure(finding.marginPct)} (estimate)`;
    case 'band-behind-neutral-point':
      return 'aft limit behind the estimated neutral point';
    case 'lateral':
      return `CG ${lengthUp(Math.abs(finding.offsetMm), say)} ${finding.offsetMm > 0 ? 'right' : 'left'}`;
    case 'fit':
      return fitCount(finding.problems);
    case 'power':
      return `wiring: ${powerCount(finding.problems)}`;
    case 'mass-unknown':
      return finding.names.length > 1 ? 'masses not known' : 'a mass not known';
    case 'no-mass':
      return 'no mass';
    case 'no-band':
      return 'no band';
    case 'not-finite':
      return 'not worked out';
    case 'loads-unchecked':
      return 'other load states not checked';
    case 'fit-unchecked':
      return 'fit not checked';
    case 'margin-unchecked':
      return 'margin not checked';
  }
}
