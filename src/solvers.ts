import type { Bench } from './store/bench';
import { createPiece } from './store/piece';
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
      startPlacing(bench);
      startJudging(bench);
    }),
  );
}

/** Placing comes as a piece of its own; without it the bench says what is missing, and fetches it when asked. */
function startPlacing({ place, notice }: Bench): void {
  const piece = createPiece(
    () => import('./placing'),
    (module) => module.placing,
  );
  piece.subscribe(() => {
    const { piece: placing, failure } = piece.get();
    if (placing) {
      notice.drop('placing');
      place.start(placing);
    } else if (failure)
      notice.tell({
        about: 'placing',
        tone: 'bad',
        text: 'What finds out where things may sit could not be fetched: the server has stopped or is out of reach. All else works on.',
        actions: [{ label: 'Retry', run: piece.retry }],
      });
  });
  piece.want();
}

/** The judgement of fit likewise. */
function startJudging({ fit, notice }: Bench): void {
  const piece = createPiece(
    () => import('./judging'),
    (module) => module.judging,
  );
  piece.subscribe(() => {
    const { piece: judging, failure } = piece.get();
    if (judging) {
      notice.drop('judging');
      fit.startJudge(judging);
    } else if (failure)
      notice.tell({
        about: 'judging',
        tone: 'bad',
        text: 'What judges whether everything fits could not be fetched: the server has stopped or is out of reach. Nothing is said of fit until it is there.',
        actions: [{ label: 'Retry', run: piece.retry }],
      });
  });
  piece.want();
}
