/** What is needed of the browser's locks, by which its tabs agree which of them keeps an aircraft. */
export type TabLocks = Pick<LockManager, 'request'>;

/** The little that is used of a channel between tabs. */
export type TabChannel = Pick<BroadcastChannel, 'postMessage' | 'onmessage'>;

export interface TabEvents {
  /** This tab keeps the aircraft from now on; `late` when another did before. */
  keeps(late: boolean): void;
  /** Another tab keeps it. */
  waits(): void;
  /** Another tab takes it over: what is not kept yet is to be kept before this returns. */
  gives(): void;
  /** Another tab has the same aircraft on its bench, or no longer. */
  company(there: boolean): void;
}

export interface OneTab {
  /** Another aircraft is on this tab's bench. */
  goTo(fleetId: string): void;
  /** Makes this tab the one that keeps it. */
  takeOver(): void;
  /** To be called when the page goes. */
  leave(): void;
}

/** What one tab tells the others of an aircraft. */
interface Word {
  readonly fleetId: string;
  readonly says: 'opened' | 'here' | 'closed' | 'give';
}

/** An aircraft for as long as it is on this tab's bench. */
interface Visit {
  readonly fleetId: string;
  /** Gives the lock back; null while it is not held. */
  release: (() => void) | null;
  waiting: AbortController | null;
}

/** How long the tab that keeps an aircraft has to give it up before it is taken, ms. */
const GIVE_MS = 1500;

const lockName = (fleetId: string) => `counterpoise.keeper.${fleetId}`;

/**
 * Of all tabs of one browser that have an aircraft on the bench exactly one keeps it. Without locks every tab believes
 * that it is the one.
 */
export function oneTab(locks: TabLocks | null, channel: TabChannel | null, events: TabEvents): OneTab {
  let here: Visit | null = null;
  const post = (visit: Visit, says: Word['says']) => channel?.postMessage({ fleetId: visit.fleetId, says });

  const keep = (visit: Visit, late: boolean): Promise<void> | undefined => {
    visit.waiting = null;
    if (visit !== here) return;
    const held = new Promise<void>((done) => {
      visit.release = done;
    });
    events.keeps(late);
    return held;
  };
  /** Waits for the lock; also once it was taken away. */
  const wait = (visit: Visit) => {
    visit.release = null;
    if (visit !== here) return;
    const mine = new AbortController();
    visit.waiting = mine;
    events.waits();
    if (visit !== here) return;
    locks
      ?.request(lockName(visit.fleetId), { signal: mine.signal }, () => keep(visit, true))
      .catch(() => {
        if (!mine.signal.aborted) wait(visit);
      });
  };
  const leave = () => {
    const left = here;
    here = null;
    if (!left) return;
    left.release?.();
    left.waiting?.abort();
    post(left, 'closed');
  };
  const steal = (visit: Visit) => {
    const broken = visit.waiting;
    if (visit !== here || !broken) return;
    locks
      ?.request(lockName(visit.fleetId), { steal: true }, () => keep(visit, true))
      .catch(() => wait(visit));
    broken.abort();
  };
  const give = (visit: Visit) => {
    if (!visit.release) return;
    events.gives();
    visit.release();
    wait(visit);
  };

  if (channel)
    channel.onmessage = ({ data }: { readonly data: Word }) => {
      if (!here || data.fleetId !== here.fleetId) return;
      if (data.says === 'give') return give(here);
      if (data.says === 'opened') post(here, 'here');
      events.company(data.says !== 'closed');
    };

  return {
    goTo: (fleetId) => {
      leave();
      const visit: Visit = { fleetId, release: null, waiting: null };
      here = visit;
      if (locks)
        locks
          .request(lockName(fleetId), { ifAvailable: true }, (lock) =>
            lock ? keep(visit, false) : wait(visit),
          )
          .catch(() => wait(visit));
      else events.keeps(false);
      post(visit, 'opened');
    },
    takeOver: () => {
      const visit = here;
      if (!visit) return;
      if (!channel) return steal(visit);
      post(visit, 'give');
      setTimeout(() => steal(visit), GIVE_MS);
    },
    leave,
  };
}

/**
 * Runs something with an aircraft that no tab has on its bench; false, and nothing run, where one has. Without locks it
 * cannot be known, so it is run: what is done so must lose nothing where a tab has it after all.
 */
export async function ifNobodyHas(
  locks: TabLocks | null,
  fleetId: string,
  run: () => Promise<unknown>,
): Promise<boolean> {
  if (!locks) {
    await run();
    return true;
  }
  return locks.request(lockName(fleetId), { ifAvailable: true }, async (lock) => {
    if (lock) await run();
    return lock !== null;
  });
}
