import { useEffect } from 'react';

/** What the one who speaks can ask for. */
export interface ShowWays {
  go(by: number): void;
  goTo(at: 'first' | 'last'): void;
  leave(): void;
  notes(): void;
  pointer(): void;
  again(): void;
}

const doOn: Readonly<Record<string, (ways: ShowWays) => void>> = {
  ArrowRight: (ways) => ways.go(1),
  ArrowDown: (ways) => ways.go(1),
  PageDown: (ways) => ways.go(1),
  ' ': (ways) => ways.go(1),
  ArrowLeft: (ways) => ways.go(-1),
  ArrowUp: (ways) => ways.go(-1),
  PageUp: (ways) => ways.go(-1),
  Home: (ways) => ways.goTo('first'),
  End: (ways) => ways.goTo('last'),
  Escape: (ways) => ways.leave(),
  n: (ways) => ways.notes(),
  p: (ways) => ways.pointer(),
  r: (ways) => ways.again(),
};

/** Keys that undo, redo and save with Ctrl held. */
const ofBench: ReadonlySet<string> = new Set(['z', 'y', 's']);

/** While something is presented the keys are its own: none of them reaches the bench behind it. */
export function useShowKeys(ways: ShowWays): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Tab') return;
      event.stopImmediatePropagation();
      // The browser may have its own of these; the bench behind has none: nothing is undone or saved unseen.
      if (event.ctrlKey || event.metaKey || event.altKey) {
        if (ofBench.has(event.key.toLowerCase())) event.preventDefault();
        return;
      }
      const pressing =
        (event.key === ' ' || event.key === 'Enter') &&
        event.target instanceof HTMLElement &&
        event.target.closest('button') !== null;
      if (pressing) return;
      const action = doOn[event.key.length === 1 ? event.key.toLowerCase() : event.key];
      if (!action) return;
      event.preventDefault();
      action(ways);
    };
    window.addEventListener('keydown', onKey, { capture: true });
    return () => window.removeEventListener('keydown', onKey, { capture: true });
  }, [ways]);
}
