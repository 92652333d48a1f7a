import type { Bench } from './store/bench';

interface Ways {
  saveFile(): unknown;
  newAircraft(): void;
}

/** Tells in words of every error that no place of the bench caught, with the ways on. */
export function tellFaults({ notice, document }: Bench, files: Ways): void {
  const tell = (error: unknown, message?: string) => {
    const words = (error instanceof Error ? error.message : (message ?? String(error))).replace(/\.$/, '');
    // A browser's word about its own layout, which says nothing about the bench.
    if (/ResizeObserver loop/.test(words)) return;
    notice.tell({
      about: 'fault',
      tone: 'bad',
      text: `Something in the bench failed, with ${document.current().name} on it: ${words}. What is on the bench is as it was.`,
      actions: [
        { label: 'Undo the last step', run: document.undo },
        { label: 'Save what is on the bench', run: files.saveFile },
        { label: 'Start clean', run: files.newAircraft },
      ],
    });
  };
  window.addEventListener('error', ({ error, message }) => tell(error, message));
  window.addEventListener('unhandledrejection', ({ reason }) => tell(reason));
}
