import type { Bench } from '../../store/bench';
import { toggleLooking } from '../../store/viewStore';

const TURN_DEG = 10;
const NEARER = 0.8;

/** What each key of the stage does; arrows are the selected thing's. */
const KEYS: Readonly<Record<string, (bench: Bench) => void>> = {
  a: ({ eye }) => eye.ask({ kind: 'turn', rightDeg: -TURN_DEG, upDeg: 0 }),
  d: ({ eye }) => eye.ask({ kind: 'turn', rightDeg: TURN_DEG, upDeg: 0 }),
  w: ({ eye }) => eye.ask({ kind: 'turn', rightDeg: 0, upDeg: TURN_DEG }),
  s: ({ eye }) => eye.ask({ kind: 'turn', rightDeg: 0, upDeg: -TURN_DEG }),
  '+': ({ eye }) => eye.ask({ kind: 'zoom', factor: NEARER }),
  '=': ({ eye }) => eye.ask({ kind: 'zoom', factor: NEARER }),
  '-': ({ eye }) => eye.ask({ kind: 'zoom', factor: 1 / NEARER }),
  f: ({ eye }) => eye.ask({ kind: 'fit' }),
  Home: ({ eye }) => eye.ask({ kind: 'reset' }),
  c: ({ view }) => toggleLooking(view, 'cut'),
  x: ({ view }) => toggleLooking(view, 'xray'),
  e: ({ view }) => toggleLooking(view, 'exploded'),
  q: ({ view }) => toggleLooking(view, 'quiet'),
};

/** The keys that look about, while the stage has the focus. Returns how to take them away. */
export function attachStageKeys(box: HTMLElement, bench: Bench): () => void {
  const stage = box.closest<HTMLElement>('[tabindex]') ?? box;
  const onKey = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) return;
    if (event.target instanceof Element && event.target.closest('input, select, button')) return;
    const act = KEYS[event.key.length === 1 ? event.key.toLowerCase() : event.key];
    if (!act) return;
    event.preventDefault();
    act(bench);
  };
  stage.addEventListener('keydown', onKey);
  return () => stage.removeEventListener('keydown', onKey);
}
