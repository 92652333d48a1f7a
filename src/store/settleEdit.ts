import { settled } from '../model/document/settle';
import type { Aircraft } from '../model/document/types';
import { type EditScope, variantsOf } from '../model/document/variants';
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
    notice.drop(ABOUT);
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
