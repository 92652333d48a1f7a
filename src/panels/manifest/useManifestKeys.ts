import type { KeyboardEvent } from 'react';
import { useBench } from '../../store/react';
import { toggleChosen } from '../../store/viewStore';
import { nameOf } from './actions';
import { useActions } from './RowActions';
import type { OwnOrder } from './useOwnOrder';

/** The keys of the table: arrows select, letters act on what is selected. `order` is what is listed. */
export function useManifestKeys(order: readonly string[], onStep: OwnOrder['step'], onOpenCard: () => void) {
  const bench = useBench();
  const act = useActions();
  return (event: KeyboardEvent<HTMLTableElement>) => {
    if (event.ctrlKey || event.metaKey) return;
    const { selectedId } = bench.view.getState();
    const table = event.currentTarget;
    if (event.altKey) {
      if (selectedId === null || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
      event.preventDefault();
      return onStep(selectedId, event.key === 'ArrowUp' ? -1 : 1);
    }
    const select = (id: string | undefined) => {
      if (id === undefined) return;
      if (event.shiftKey) toggleChosen(bench.view, id);
      else bench.view.setState({ selectedId: id, groupIds: [] });
      // After the row has become the one that can be tabbed to, and before the next key, however slow the picture is.
      queueMicrotask(() =>
        table
          .querySelector<HTMLElement>(`[data-item="${CSS.escape(id)}"] button`)
          ?.focus({ preventScroll: true }),
      );
    };
    const now = selectedId === null ? -1 : order.indexOf(selectedId);
    if (event.key === 'ArrowDown') select(order[now + 1]);
    else if (event.key === 'ArrowUp') select(order[now < 0 ? order.length - 1 : now - 1]);
    else if (event.key === 'Home') select(order[0]);
    else if (event.key === 'End') select(order.at(-1));
    else if (selectedId === null) return;
    else {
      const name = nameOf(bench.document.current(), selectedId);
      const next = order[now + 1] ?? order[now - 1];
      switch (event.key) {
        case 'Delete':
        case 'Backspace':
          if (act.remove(selectedId, name)) select(next);
          break;
        case 'l':
          act.lock(selectedId, name);
          break;
        case 'h':
          act.hide(selectedId);
          break;
        case 'd':
          act.duplicate(selectedId, name);
          break;
        case 'm':
          act.mirror(selectedId, name);
          break;
        case 'Enter':
          onOpenCard();
          break;
        default:
          return;
      }
    }
    event.preventDefault();
  };
}
