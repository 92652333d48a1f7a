import type { Bench } from './store/bench';
import { createPiece, type Piece } from './store/piece';
import { adviceSolver } from './workers/adviceSolver';
import { fitSearcher } from './workers/fitSearcher';
import { loadSolver } from './workers/loadSolver';
import { stabilitySolver } from './workers/stabilitySolver';
import { watched } from './workers/watched';

/** How long each worker may be silent, s: several times what it takes for the largest aircraft. */
const STABILITY_S = 30;
const LOADS_S = 30;
const FIT_S = 180;
const ADVICE_S = 60;

/** Gives the bench the workers that do what is too slow for a drag frame. */
export function startSolvers(bench: Bench): void {
  const solveStability = stabilitySolver(
    watched(
      () => new Worker(new URL('./workers/stability.worker.ts', import.meta.url), { type: 'module' }),
      STABILITY_S,
    ),
  );
  const solveLoads = loadSolver(
    watched(
      () => new Worker(new URL('./workers/load.worker.ts', import.meta.url), { type: 'module' }),
      LOADS_S,
    ),
  );
  const seekAdvice = adviceSolver(
    watched(
      () => new Worker(new URL('./workers/advice.worker.ts', import.meta.url), { type: 'module' }),
      ADVICE_S,
    ),
  );
  // Opened when the first way in is asked for.
  bench.fit.start(
    fitSearcher(
      watched(
        () => new Worker(new URL('./workers/fit.worker.ts', import.meta.url), { type: 'module' }),
        FIT_S,
      ),
    ),
  );
  // After the first paint: the bench shows before the worker is even fetched.
  requestAnimationFrame(() =>
    setTimeout(() => {
      bench.stability.start(solveStability);
      bench.rest.start(solveLoads);
      bench.verdict.start(seekAdvice);
      startLater(bench);
    }),
  );
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

function startLater(bench: Bench): void {
  const { place, rest, fit } = bench;
  whenThere(
    bench,
    atFirstRest,
    'What works out where things may sit, and how sure the balance is,',
    (parts) => {
      place.start(parts.placing);
      rest.startCertainty(parts.certaintyOf);
    },
  );
  whenThere(bench, judgingPiece, 'What judges whether everything fits', fit.startJudge);
}

/** Fetches a piece and starts what it is for; when it does not come, says what is missing and fetches it when asked. */
function whenThere<T>({ notice }: Bench, piece: Piece<T>, what: string, start: (piece: T) => void): void {
  piece.subscribe(() => {
    const { piece: there, failure } = piece.get();
    if (failure)
      notice.tell({
        about: what,
        tone: 'bad',
        text: `${what} could not be fetched: the server has stopped or is out of reach. Nothing is said of it until it is there; all else works on.`,
        actions: [{ label: 'Retry', run: piece.retry }],
      });
    else notice.drop(what);
    if (there !== null) start(there);
  });
  piece.want();
}
