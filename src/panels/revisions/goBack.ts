import type { Aircraft } from '../../model/document/types';
import type { Bench } from '../../store/bench';

/** Puts an earlier state on the bench just as it was, its variants too: one step, which undo takes back. */
export function goBack({ drag, document }: Bench, title: string, then: Aircraft): void {
  drag.cancel();
  document.commitVariants(`Go back to “${title}”`, then);
}
