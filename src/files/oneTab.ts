/** What is needed of the browser's locks, by which its tabs agree which of them keeps the work. */
export type TabLocks = Pick<LockManager, 'request'>;

/** The little that is used of a channel between tabs. */
export type TabChannel = Pick<BroadcastChannel, 'postMessage' | 'onmessage'>;

export interface TabEvents {
  /** This tab keeps the work from now on; `late` when another did before. */
  keeps(late: boolean): void;
  /** Another tab keeps the work. */
  waits(): void;
  /** Another tab has opened the bench, or closed it. */
  company(there: boolean): void;
}

export interface OneTab {
  /** Makes this tab the one that keeps the work. */
  takeOver(): void;
  /** To be called when the page goes. */
  leave(): void;
}

const NAME = 'counterpoise.keeper';

/** Of all tabs of one browser exactly one keeps the work. Without locks every tab believes that it is the one. */
export function oneTab(locks: TabLocks | null, channel: TabChannel | null, events: TabEvents): OneTab {
  let waiting: AbortController | null = null;
  const hold = () => new Promise<void>(() => {});

  const keep = (late: boolean) => {
    waiting = null;
    events.keeps(late);
    return hold();
  };
  /** Waits for the lock; also once it was taken away. */
  const wait = () => {
    events.waits();
    const mine = new AbortController();
    waiting = mine;
    locks
      ?.request(NAME, { signal: mine.signal }, () => keep(true))
      .catch(() => {
        if (!mine.signal.aborted) wait();
      });
  };

  if (locks) {
    locks.request(NAME, { ifAvailable: true }, (lock) => (lock ? keep(false) : wait())).catch(wait);
  } else events.keeps(false);

  if (channel) {
    channel.onmessage = ({ data }) => {
      if (data === 'opened') channel.postMessage('here');
      events.company(data !== 'closed');
    };
    channel.postMessage('opened');
  }

  return {
    takeOver: () => {
      const broken = waiting;
      locks?.request(NAME, { steal: true }, () => keep(true)).catch(wait);
      broken?.abort();
    },
    leave: () => channel?.postMessage('closed'),
  };
}
