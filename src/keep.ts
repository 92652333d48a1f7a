import type { Autosave } from './files/autosave';
import type { FilePickers } from './files/filePickers';
import { createKeeping } from './files/keeping';
import { oneTab } from './files/oneTab';
import { opened, type StartUp, tellAside } from './files/startUp';
import { pageStorage, tabStorage } from './files/storage';
import type { Bench } from './store/bench';

/** How long the page must have stood before an opening counts as well ended, ms. */
const STANDS_MS = 1500;

/** Keeps the work in the browser for as long as the page is open, and tells whenever it does not. */
export function keepWork(bench: Bench, autosave: Autosave, pickers: FilePickers, start: StartUp): void {
  const { notice, document: history } = bench;
  const keeping = createKeeping(history, autosave, notice, pageStorage);
  const held =
    'What could not be read fills the browser’s store, so nothing new is kept. Save it and this as files.';

  tellAside(bench, pageStorage, pickers);
  const probed = autosave.probe(history.api.getState().committed);
  if (!probed.ok) notice.tell({ about: 'store', tone: 'bad', text: probed.sentence });
  else if (!start.mayKeep) notice.tell({ about: 'store', tone: 'bad', text: held });

  const tabs = oneTab(navigator.locks ?? null, channel(), {
    keeps: (late) => {
      notice.drop('tabs');
      if (start.mayKeep) keeping.begin(late);
      tellAside(bench, pageStorage, pickers);
    },
    waits: () => {
      keeping.pause();
      notice.tell({
        about: 'tabs',
        tone: 'bad',
        text: 'The bench is open in another tab, and that one keeps the work. What is changed here is kept only as a file.',
        actions: [{ label: 'Keep this tab’s work instead', run: () => tabs.takeOver() }],
      });
    },
    company: (there) => {
      if (notice.api.getState().notices.some(({ about, tone }) => about === 'tabs' && tone === 'bad')) return;
      if (there)
        notice.tell({
          about: 'tabs',
          tone: 'note',
          text: 'The bench is open in another tab too. This tab keeps the work.',
        });
      else notice.drop('tabs');
    },
  });

  const standing = setTimeout(() => opened(tabStorage), STANDS_MS);
  window.addEventListener('pagehide', () => {
    keeping.flush();
    clearTimeout(standing);
    opened(tabStorage);
    tabs.leave();
  });
  window.document.addEventListener('visibilitychange', () => {
    if (window.document.visibilityState === 'hidden') keeping.flush();
  });
  window.addEventListener('beforeunload', (event) => {
    keeping.flush();
    if (keeping.unkept()) event.preventDefault();
  });
}

const channel = () => (typeof BroadcastChannel === 'function' ? new BroadcastChannel('counterpoise') : null);
