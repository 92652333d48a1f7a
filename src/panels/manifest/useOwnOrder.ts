import { type PointerEvent, useMemo, useRef } from 'react';
import { listInOrder, movedBefore } from '../../model/document/listOrder';
import { useBench } from '../../store/react';
import { useEdit } from '../fields/useEdit';
import { nameOf } from './actions';
import type { Sort } from './order';

export const ownOrderSort: Sort = { key: 'own', falling: false };

/** Puts the lines of the manifest into an order by hand. */
export interface OwnOrder {
  /** One place up (−1) or down (1) within its section. */
  readonly step: (id: string, by: -1 | 1) => void;
  /** From the press on a row's grip until it is let go. */
  readonly drag: (event: PointerEvent<HTMLElement>, id: string) => void;
}

/**
 * From whatever order is shown, which is kept as the own one but for what is moved: `sections` are the ids as they are
 * listed, and `onOwn` turns the list to its own order. Each move is one step.
 */
export function useOwnOrder(sections: readonly (readonly string[])[], onOwn: () => void): OwnOrder {
  const bench = useBench();
  const edit = useEdit();
  const latest = useRef({ sections, onOwn });
  latest.current = { sections, onOwn };
  return useMemo(() => {
    const sectionOf = (id: string) => latest.current.sections.find((ids) => ids.includes(id)) ?? [];
    const put = (id: string, beforeId: string | null) => {
      const ids = movedBefore(sectionOf(id), id, beforeId);
      latest.current.onOwn();
      edit(`Put ${nameOf(bench.document.current(), id)} elsewhere in the list`, (aircraft) =>
        listInOrder(aircraft, ids),
      );
    };
    return {
      step: (id, by) => {
        const ids = sectionOf(id);
        const at = ids.indexOf(id);
        if (at + by < 0 || at + by >= ids.length) return;
        put(id, (by < 0 ? ids[at - 1] : ids[at + 2]) ?? null);
      },
      drag: (event, id) => dragRow(event, sectionOf(id), (beforeId) => put(id, beforeId)),
    };
  }, [bench, edit]);
}

/** Follows the pointer over the rows of a section, marks where the row would go, and says so when it is let go. */
function dragRow(
  event: PointerEvent<HTMLElement>,
  ids: readonly string[],
  onDrop: (beforeId: string | null) => void,
): void {
  const grip: HTMLElement = event.currentTarget;
  const table = grip.closest('table');
  if (!table || event.button !== 0) return;
  event.preventDefault();
  event.stopPropagation();
  const rows = ids.flatMap(
    (id) => table.querySelector<HTMLElement>(`tr[data-item="${CSS.escape(id)}"]`) ?? [],
  );
  let target: { readonly beforeId: string | null; readonly row: HTMLElement } | null = null;
  const mark = (row: HTMLElement | null, side: string) => {
    for (const other of rows) delete other.dataset.drop;
    if (row) row.dataset.drop = side;
  };
  const over = (y: number) => {
    const before = rows.find((row) => y < row.getBoundingClientRect().top + row.offsetHeight / 2);
    const row = before ?? rows.at(-1);
    if (!row) return;
    target = { beforeId: before?.dataset.item ?? null, row };
    mark(row, before ? 'before' : 'after');
  };
  const listening = new AbortController();
  const end = (keep: boolean) => {
    listening.abort();
    mark(null, '');
    if (keep && target) onDrop(target.beforeId);
  };
  const { signal } = listening;
  grip.setPointerCapture(event.pointerId);
  grip.addEventListener('pointermove', ({ clientY }) => over(clientY), { signal });
  grip.addEventListener('pointerup', () => end(true), { signal });
  grip.addEventListener('pointercancel', () => end(false), { signal });
  window.addEventListener(
    'keydown',
    (pressed) => {
      if (pressed.key !== 'Escape') return;
      pressed.stopPropagation();
      end(false);
    },
    { capture: true, signal },
  );
}
