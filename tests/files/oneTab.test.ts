import { expect, test } from 'vitest';
import { type OneTab, oneTab, type TabLocks } from '../../src/files/oneTab';

/** The Web Locks of one browser, as far as its specification bears on one exclusive name (W3C Web Locks API). */
function browserLocks() {
  type Grant = { readonly end: (reason?: unknown) => void };
  let holder: Grant | null = null;
  const queue: (() => void)[] = [];
  const next = () => queue.shift()?.();
  const request = (_name: string, options: LockOptions, run: (lock: Lock | null) => unknown) =>
    new Promise((resolve, reject) => {
      const grant = () => {
        const mine: Grant = {
          end: (reason) => {
            if (reason) reject(reason);
            if (holder !== mine) return;
            holder = null;
            next();
          },
        };
        holder = mine;
        Promise.resolve(run({} as Lock)).then(resolve, reject);
      };
      const stolen = () => Object.assign(new Error('stolen'), { name: 'AbortError' });
      if (options.steal) {
        const before = holder;
        grant();
        before?.end(stolen());
      } else if (!holder) grant();
      else if (options.ifAvailable) resolve(run(null));
      else {
        const wait = () => grant();
        queue.push(wait);
        options.signal?.addEventListener('abort', () => {
          queue.splice(queue.indexOf(wait), 1);
          reject(stolen());
        });
      }
    });
  return {
    locks: { request } as unknown as TabLocks,
    /** The tab that holds the lock is closed. */
    closeHolder: () => holder?.end(),
  };
}

const soon = () => new Promise((done) => setTimeout(done, 1));

function tab(locks: TabLocks, name: string, log: string[]): OneTab {
  return oneTab(locks, null, {
    keeps: (late) => log.push(`${name} keeps${late ? ' late' : ''}`),
    waits: () => log.push(`${name} waits`),
    company: () => {},
  });
}

test('the first tab keeps the work; the second waits, and keeps it once the first is closed', async () => {
  const { locks, closeHolder } = browserLocks();
  const log: string[] = [];
  tab(locks, 'first', log);
  tab(locks, 'second', log);
  await soon();
  expect(log).toEqual(['first keeps', 'second waits']);
  closeHolder();
  await soon();
  expect(log.slice(2)).toEqual(['second keeps late']);
});

test('a tab may take over, to and fro, and at no moment do two keep', async () => {
  const { locks } = browserLocks();
  const log: string[] = [];
  const first = tab(locks, 'first', log);
  const second = tab(locks, 'second', log);
  await soon();
  log.length = 0;
  second.takeOver();
  await soon();
  first.takeOver();
  await soon();
  second.takeOver();
  await soon();
  expect(log).toEqual([
    'second keeps late',
    'first waits',
    'first keeps late',
    'second waits',
    'second keeps late',
    'first waits',
  ]);
});

test('without locks each tab believes that it keeps the work', () => {
  const log: string[] = [];
  oneTab(null, null, { keeps: (late) => log.push(`keeps ${late}`), waits: () => {}, company: () => {} });
  expect(log).toEqual(['keeps false']);
});

test('two tabs hear of each other, and of one that goes', () => {
  const ends: { onmessage: ((event: MessageEvent) => unknown) | null }[] = [];
  const channel = () => {
    const end = {
      onmessage: null as ((event: MessageEvent) => unknown) | null,
      postMessage: (data: string) => {
        for (const other of ends) if (other !== end) other.onmessage?.({ data } as MessageEvent);
      },
    };
    ends.push(end);
    return end;
  };
  const heard: string[] = [];
  const open = (name: string) =>
    oneTab(null, channel() as never, {
      keeps: () => {},
      waits: () => {},
      company: (there) => heard.push(`${name} ${there ? 'has company' : 'is alone'}`),
    });
  open('first');
  const second = open('second');
  second.leave();
  expect(heard).toEqual(['second has company', 'first has company', 'first is alone']);
});
