import type { NoticeStore } from '../../store/noticeStore';
import changes from './changes.json';

interface Change {
  readonly on: string;
  readonly says: string;
}

interface OfflineParts {
  readonly notice: NoticeStore;
  readonly workers: ServiceWorkerContainer;
  /** Keeps what is not kept yet, before the page is loaded again. */
  flush(): void;
  reload(): void;
}

/**
 * Lets the browser keep the whole page, so that it works without a network. A newer version is told with what is new in
 * it, and used only when the person asks.
 */
export async function keepOffline({ notice, workers, flush, reload }: OfflineParts): Promise<void> {
  const isFirst = workers.controller === null;
  let asked = false;
  workers.addEventListener('controllerchange', () => {
    if (asked) return reload();
    if (isFirst) return;
    notice.tell({
      about: 'update',
      tone: 'note',
      text: 'Another tab has gone on to a new version of the bench. This one uses it once it is loaded again.',
      actions: [{ label: 'Load it again', run: reload }],
    });
  });
  const useNow = (waiting: ServiceWorker) => () => {
    flush();
    asked = true;
    waiting.postMessage('use now');
  };
  const tellOf = async (waiting: ServiceWorker) => {
    const news = await whatIsNew(waiting);
    notice.tell({
      about: 'update',
      tone: 'note',
      text: `A new version of the bench is ready.${news ? ` New in it: ${news}.` : ''} What you work on stays as it is.`,
      actions: [{ label: 'Use it now', run: useNow(waiting) }],
    });
  };
  let registration: ServiceWorkerRegistration;
  try {
    registration = await workers.register('./service-worker.js', { scope: './', updateViaCache: 'none' });
  } catch {
    // Without a network, or where the browser does not let it be: what was kept before goes on being used.
    return;
  }
  const watch = (worker: ServiceWorker) =>
    worker.addEventListener('statechange', () => {
      if (worker.state === 'installed' && workers.controller) void tellOf(worker);
      if (worker.state === 'activated' && isFirst && !asked)
        notice.tell({
          about: 'offline',
          tone: 'done',
          text: 'The browser has kept the whole bench: from now on it works without a network.',
        });
    });
  if (registration.waiting && workers.controller) void tellOf(registration.waiting);
  if (registration.installing) watch(registration.installing);
  registration.addEventListener('updatefound', () => {
    if (registration.installing) watch(registration.installing);
  });
}

/** How long the waiting worker may take to answer, ms. */
const ANSWER_MS = 2000;

/** What the waiting version has that this one has not, in words; empty where it does not say. */
async function whatIsNew(waiting: ServiceWorker): Promise<string> {
  const { port1, port2 } = new MessageChannel();
  const answer = new Promise<unknown>((done) => {
    port1.onmessage = ({ data }) => done(data);
    setTimeout(() => done([]), ANSWER_MS);
  });
  waiting.postMessage('what is new', [port2]);
  const list = await answer;
  port1.close();
  const alreadyHere = new Set(changes.map(({ says }) => says));
  return (Array.isArray(list) ? list : [])
    .filter(isChange)
    .map(({ says }) => says)
    .filter((says) => !alreadyHere.has(says))
    .join('; ');
}

const isChange = (value: unknown): value is Change =>
  typeof value === 'object' && value !== null && 'says' in value && typeof value.says === 'string';
