import type { Advice } from './model/advice/advise';
import type { MeshAsk, MeshReading } from './model/airframe/meshReading';
import type { LoadEnvelope } from './model/loads/loadStates';
import type { StabilityAnswer } from './model/stability/stability';
import type { Bench } from './store/bench';
import { createPiece, type Piece } from './store/piece';
import type { AdviceTask } from './workers/adviceTask';
import { fitSearcher } from './workers/fitSearcher';
import type { FitAnswer, FitTask } from './workers/fitTask';
import type { LoadTask } from './workers/loadTask';
import type { StabilityTask } from './workers/stabilityTask';
import type { VariantProgress, VariantTask } from './workers/variantTask';
import { workerClient } from './workers/workerClient';

/** Each worker may be silent for several times what it takes for the largest aircraft. */
const askStability = workerClient<StabilityTask, StabilityAnswer>(
  () => new Worker(new URL('./workers/stability.worker.ts', import.meta.url), { type: 'module' }),
  { search: 'The estimate of the neutral point', purpose: 'the neutral point', silentS: 30 },
);
const askLoads = workerClient<LoadTask, LoadEnvelope | null>(
  () => new Worker(new URL('./workers/load.worker.ts', import.meta.url), { type: 'module' }),
  { search: 'The search through the load states', purpose: 'the load states', silentS: 30 },
);
const askAdvice = workerClient<AdviceTask, Advice>(
  () => new Worker(new URL('./workers/advice.worker.ts', import.meta.url), { type: 'module' }),
  { search: 'The search for a remedy', purpose: 'remedies', silentS: 60 },
);
const askFit = workerClient<FitTask, FitAnswer>(
  () => new Worker(new URL('./workers/fit.worker.ts', import.meta.url), { type: 'module' }),
  { search: 'The search for a way in', purpose: 'fitting', silentS: 180 },
);
const askVariants = workerClient<VariantTask, null, VariantProgress>(
  () => new Worker(new URL('./workers/variant.worker.ts', import.meta.url), { type: 'module' }),
  { search: 'The comparing of the variants', purpose: 'variants', silentS: 120 },
);

const askMesh = workerClient<MeshAsk, MeshReading>(
  () => new Worker(new URL('./workers/mesh.worker.ts', import.meta.url), { type: 'module' }),
  { search: 'The reading of the mesh', purpose: 'meshes', silentS: 120 },
);

/**
 * Gives a bench the workers that do what is too slow for a drag frame. Each is opened when it is first asked. Returns how
 * to let go of a bench that does not last as long as the page.
 */
export function startSolvers(bench: Bench): () => void {
  let left = false;
  const stops: (() => void)[] = [];
  bench.fit.start(fitSearcher(askFit));
  bench.mesh.start((ask, signal) => askMesh(ask, { signal }));
  // After the first paint: the bench shows before the worker is even fetched.
  requestAnimationFrame(() =>
    setTimeout(() => {
      if (left) return;
      bench.stability.start((input, detail) => askStability({ input, detail }));
      bench.rest.start((aircraft, down, signal) => askLoads({ aircraft, down }, { signal }));
      bench.verdict.start((aircraft, given, spoken) => askAdvice({ aircraft, given, spoken }));
      bench.compare.start((aircraft, down, onProgress, signal) =>
        askVariants({ aircraft, down }, { onProgress, signal }),
      );
      stops.push(...startLater(bench));
    }),
  );
  return () => {
    left = true;
    for (const stop of stops) stop();
  };
}

/** What the bench can show without: where things may sit, and how sure the balance is. */
const atFirstRest = createPiece(
  () => import('./atFirstRest'),
  (module) => module,
);
const judgingPiece = createPiece(
  () => import('./judging'),
  (module) => module.judging,
);

function startLater(bench: Bench): readonly (() => void)[] {
  const { place, rest, fit } = bench;
  return [
    whenThere(
      bench,
      atFirstRest,
      'What works out where things may sit, and how sure the balance is,',
      (parts) => {
        place.start(parts.placing);
        rest.startCertainty(parts.certaintyOf);
      },
    ),
    whenThere(bench, judgingPiece, 'What judges whether everything fits', fit.startJudge),
  ];
}

/**
 * Fetches a piece and starts what it is for; when it does not come, says what is missing and fetches it when asked.
 * Returns how to stop waiting for it.
 */
function whenThere<T>(
  { notice }: Bench,
  piece: Piece<T>,
  what: string,
  start: (piece: T) => void,
): () => void {
  const there = piece.get().piece;
  if (there !== null) {
    start(there);
    return () => {};
  }
  const stop = piece.subscribe(() => {
    const { piece: fetched, failure } = piece.get();
    if (failure)
      notice.tell({
        about: what,
        tone: 'bad',
        text: `${what} could not be fetched: the server has stopped or is out of reach. Nothing is said of it until it is there; all else works on.`,
        actions: [{ label: 'Retry', run: piece.retry }],
      });
    else notice.drop(what);
    if (fetched !== null) start(fetched);
  });
  piece.want();
  return stop;
}
