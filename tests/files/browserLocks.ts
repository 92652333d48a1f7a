import type { TabLocks } from '../../src/files/oneTab';

interface Grant {
  readonly end: (reason?: unknown) => void;
}

/** The Web Locks of one browser, as far as its specification bears on exclusive names (W3C Web Locks API). */
export function browserLocks() {
  const holders = new Map<string, Grant>();
  const queues = new Map<string, (() => void)[]>();
  const queueOf = (name: string) => {
    const queue = queues.get(name) ?? [];
    queues.set(name, queue);
    return queue;
  };
  const stolen = () => Object.assign(new Error('stolen'), { name: 'AbortError' });

  const request = (name: string, options: LockOptions, run: (lock: Lock | null) => unknown) =>
    new Promise((resolve, reject) => {
      const grant = () => {
        const mine: Grant = {
          end: (reason) => {
            if (reason) reject(reason);
            if (holders.get(name) !== mine) return;
            holders.delete(name);
            queueOf(name).shift()?.();
          },
        };
        holders.set(name, mine);
        Promise.resolve(run({} as Lock)).then(
          (done) => {
            mine.end();
            resolve(done);
          },
          (error) => {
            mine.end();
            reject(error);
          },
        );
      };
      if (options.steal) {
        const before = holders.get(name);
        grant();
        before?.end(stolen());
      } else if (!holders.has(name)) grant();
      else if (options.ifAvailable) resolve(run(null));
      else {
        const queue = queueOf(name);
        const wait = () => grant();
        queue.push(wait);
        options.signal?.addEventListener('abort', () => {
          const at = queue.indexOf(wait);
          if (at >= 0) queue.splice(at, 1);
          reject(stolen());
        });
      }
    });
  return {
    locks: { request } as unknown as TabLocks,
    /** The tab that holds the lock is closed. */
    closeHolder: (name: string) => holders.get(name)?.end(),
  };
}
