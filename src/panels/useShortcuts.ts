import { useEffect } from 'react';
import { useBench } from '../store/react';
import { views } from './ViewSwitch';

interface Openers {
  readonly openShortcuts: () => void;
  readonly save: () => void;
  /** Nothing may be moved, played or looked at otherwise for now. */
  readonly still?: boolean;
}

/** Whether a key belongs to what has the focus rather than to the bench. */
function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    target.closest('input:not([type=radio]), select, textarea, dialog') !== null
  );
}

/** The keys that work wherever the focus is, save in a field or a dialog. */
export function useShortcuts({ openShortcuts, save, still = false }: Openers): void {
  const bench = useBench();
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || isTyping(event.target)) return;
      const { document: history, view } = bench;
      // The lessons have a bench of their own, whose keys these are.
      if (view.getState().place === 'lessons' && event.key !== '?') return;
      if (still && event.key.toLowerCase() !== 's' && event.key !== '?') return;
      if ((event.ctrlKey || event.metaKey) && !event.altKey) {
        const key = event.key.toLowerCase();
        if (key === 'y' || (key === 'z' && event.shiftKey)) history.redo();
        else if (key === 'z') history.undo();
        else if (key === 's') save();
        else return;
      } else if (event.ctrlKey || event.metaKey || event.altKey) {
        return;
      } else if (/^[1-4]$/.test(event.key)) {
        const chosen = views[Number(event.key) - 1];
        if (chosen) view.setState({ view: chosen.view });
      } else if (
        event.key === ' ' &&
        !(event.target instanceof HTMLElement && event.target.closest('button, summary, [role=radio]'))
      ) {
        if (bench.balance.get().usableMl > 0) view.setState(({ playing }) => ({ playing: !playing }));
      } else if (event.key === '?') {
        openShortcuts();
      } else {
        return;
      }
      event.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [bench, openShortcuts, save, still]);
}
