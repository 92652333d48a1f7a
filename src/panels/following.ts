import { perObject } from '../engine/memory/memory';
import type { Bench } from '../store/bench';

/** How long a hand must rest before what costs more than a frame of its drag follows it, ms. */
const REST_MS = 80;

type Follow = (listener: () => void) => () => void;

/** One ear at the bench for all who listen through it, while there are any: a hundred of their own would cost a move more. */
function shared(listen: Follow): Follow {
  const listeners = new Set<() => void>();
  let stop = () => {};
  return (listener) => {
    if (listeners.size === 0)
      stop = listen(() => {
        for (const tell of listeners) tell();
      });
    listeners.add(listener);
    return () => {
      listeners.delete(listener);
      if (listeners.size === 0) stop();
    };
  };
}

const everyChange = perObject(({ balance, view, rest, place, fit, verdict }: Bench) =>
  shared((tell) => {
    const off = [balance, view, rest, place, fit, verdict.api].map((store) => store.subscribe(tell));
    return () =>
      off.forEach((stop) => {
        stop();
      });
  }),
);

const everyRest = perObject((bench: Bench) =>
  shared((tell) => {
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
