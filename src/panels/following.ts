import { perObject } from '../engine/memory/memory';
import type { Bench } from '../store/bench';
import { earAt, sharedEar } from '../store/sharedEar';

/** How long a hand must rest before what costs more than a frame of its drag follows it, ms. */
const REST_MS = 80;

const everyChange = perObject(({ balance, view, rest, place, fit, verdict }: Bench) =>
  earAt([balance, view, rest, place, fit, verdict.api]),
);

const everyRest = perObject((bench: Bench) =>
  sharedEar((tell) => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const stop = everyChange(bench)(() => {
      clearTimeout(timer);
      if (bench.document.api.getState().preview === null) tell();
      else timer = setTimeout(tell, REST_MS);
    });
    return () => {
      clearTimeout(timer);
      stop();
    };
  }),
);

/** Calls after anything of the bench has changed. A listener keeps its faults to itself. */
export const follow = (bench: Bench, listener: () => void): (() => void) => everyChange(bench)(listener);

/** The same, but while something is in hand only where it rests. */
export const followAtRest = (bench: Bench, listener: () => void): (() => void) => everyRest(bench)(listener);

/** One ear for the fit of all things, which hands on what has changed to those alone whom it is about. */
const everyFit = perObject((bench: Bench) => {
  const listeners = new Map<string, Set<() => void>>();
  let stop = () => {};
  let last = bench.fit.whole();
  const hear = () => {
    const now = bench.fit.whole();
    if (now === last) return;
    const ids = new Set([...(last?.byId.keys() ?? []), ...(now?.byId.keys() ?? [])]);
    last = now;
    for (const id of ids) for (const tell of listeners.get(id) ?? []) tell();
  };
  return (id: string, listener: () => void) => {
    if (listeners.size === 0) {
      last = bench.fit.whole();
      stop = everyChange(bench)(hear);
    }
    const alike = listeners.get(id) ?? new Set();
    listeners.set(id, alike.add(listener));
    return () => {
      alike.delete(listener);
      if (alike.size === 0) listeners.delete(id);
      if (listeners.size === 0) stop();
    };
  };
});

/** Calls after what does not fit of a thing has changed, by its id in the file. */
export const followFit = (bench: Bench, id: string, listener: () => void): (() => void) =>
  everyFit(bench)(id, listener);
