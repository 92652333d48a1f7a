import type { Aircraft } from './model/document/types';
import type { Bench } from './store/bench';

interface Ways {
  saveFile(): unknown;
  newAircraft(): void;
}

/** Tells in words of every error that no place of the bench caught, with the ways on. */
export function tellFaults({ notice, document }: Bench, files: Ways): void {
  /** What the bench held before the step on which the fault came; null while none is told. */
  let before: Aircraft | null = null;
  const tell = (error: unknown, message?: string) => {
    const words = (error instanceof Error ? error.message : (message ?? String(error))).replace(/\.$/, '');
    // A browser's word about its own layout, which says nothing about the bench.
    if (/ResizeObserver loop/.test(words)) return;
    before = document.api.getState().past.at(-1)?.aircraft ?? null;
    notice.tell({
      about: 'fault',
      tone: 'bad',
      text: `Something in the bench failed, with ${document.current().name} on it: ${words}. Nothing on the bench is lost.`,
      actions: [
        { label: 'Undo the last step', run: document.undo },
        { label: 'Save what is on the bench', run: files.saveFile },
        { label: 'Start clean', run: files.newAircraft },
      ],
    });
  };
  // With that step undone the fault is gone too.
  document.subscribe(() => {
    if (before !== null && document.current() === before) {
      before = null;
      notice.drop('fault');
    }
  });
  window.addEventListener('error', ({ error, message }) => tell(error, message));
  window.addEventListener('unhandledrejection', ({ reason }) => tell(reason));
}
