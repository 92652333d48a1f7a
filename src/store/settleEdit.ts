import { difference } from '../model/document/difference';
import { settled } from '../model/document/settle';
import type { Aircraft } from '../model/document/types';
import { type EditScope, LEAVABLE, sharedAircraft, variantsOf } from '../model/document/variants';
import { editFault } from '../model/reading/editFault';
import type { NoticeStore } from './noticeStore';

/**
 * What becomes of an edit on an aircraft with variants. One that cannot be for this variant only is for all, and one that
 * makes another variant impossible is not done; both are told.
 */
export function settleEdit(
  before: Aircraft,
  next: Aircraft,
  scope: EditScope,
  notice: NoticeStore,
): Aircraft {
  if (variantsOf(before).length === 0 || !next.variants) return next;
  const asAsked = settled(before, next, scope);
  const fault = editFault(before, asAsked);
  if (fault === null) {
    if (scope === 'this' && reachesAll(before, asAsked))
      notice.tell({ about: ABOUT, tone: 'note', text: SHARED });
    else notice.drop(ABOUT);
    return asAsked;
  }
  const forAll = scope === 'this' ? settled(before, next, 'all') : asAsked;
  const done = editFault(before, forAll) === null;
  notice.tell({
    about: ABOUT,
    tone: done ? 'note' : 'bad',
    text: done
      ? 'That cannot differ between variants, so it counts for all of them.'
      : `Not done, for another variant could not be so. ${fault}`,
  });
  return done ? forAll : before;
}

const ABOUT = 'variants';
const SHARED =
  'That counts for all variants: only where things stand, what they weigh and what is aboard may differ.';

/** What is written about the aircraft rather than built: nobody takes it for one variant's. */
const ASIDE: ReadonlySet<string> = new Set([
  'name',
  'notes',
  'weighIns',
  'referencePoints',
  'gridMm',
  'talk',
]);

/** Whether an edit for this variant only changed what all share, other than by what it added. */
function reachesAll(before: Aircraft, after: Aircraft): boolean {
  const steps = difference(sharedAircraft(before), sharedAircraft(after));
  return steps.some(
    (step) => !ASIDE.has(step.in) && !(step.put && LEAVABLE.some((list) => list === step.in)),
  );
}
