import { type RefObject, useEffect } from 'react';
import { useView } from '../../store/react';

/** Keeps the row of what is selected, here or elsewhere, in sight. */
export function useSelectedInSight(table: RefObject<HTMLTableElement | null>): void {
  const selectedId = useView((view) => view.selectedId);
  useEffect(() => {
    if (selectedId === null) return;
    const line = table.current?.querySelector(`[data-item="${CSS.escape(selectedId)}"]`);
    if (line) showInList(line);
  }, [selectedId, table]);
}

/**
 * Brings a row and its actions into the list's own window. Only the list scrolls: were the page to follow, the stage
 * would slide away under the hand that has just taken hold of the item.
 */
function showInList(line: Element): void {
  const list = line.closest('.manifest-scroll');
  if (!list) return;
  const last = line.nextElementSibling ?? line;
  const seen = list.getBoundingClientRect();
  const below = last.getBoundingClientRect().bottom - seen.bottom;
  if (below > 0) list.scrollTop += below;
  const above = seen.top - line.getBoundingClientRect().top;
  if (above > 0) list.scrollTop -= above;
}
