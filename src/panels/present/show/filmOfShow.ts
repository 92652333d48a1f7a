import type { Slide } from '../../../model/document/types';
import type { Bench } from '../../../store/bench';
import { filmed, filmKindTrouble } from '../../along/film';
import { stayMs } from './burnPlay';

/** How long the picture is waited for, ms, and how often it is looked for. */
const PATIENCE_MS = 30_000;
const LOOK_MS = 200;

/** Films what the stage shows from the first slide to the last, each for as long as it takes. */
export async function filmOfShow(
  bench: Bench,
  slides: readonly Slide[],
  onSlide: (at: number) => void,
  signal: AbortSignal,
): Promise<Uint8Array<ArrayBuffer>> {
  const trouble = filmKindTrouble();
  if (trouble) throw new Error(trouble);
  for (let waitedMs = 0; !bench.pictures.now() && waitedMs < PATIENCE_MS; waitedMs += LOOK_MS)
    await rest(LOOK_MS, signal);
  return filmed(bench, async () => {
    for (const [at, slide] of slides.entries()) {
      onSlide(at);
      await rest(stayMs(slide), signal);
    }
  });
}

const rest = (ms: number, signal: AbortSignal): Promise<void> =>
  new Promise((resolve, reject) => {
    const stop = () => reject(new Error('it was called off'));
    if (signal.aborted) return stop();
    signal.addEventListener('abort', stop, { once: true });
    setTimeout(resolve, ms);
  });
