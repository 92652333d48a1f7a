import type { SolveMilp } from '../engine/place/milp';
import type { PlaceProgress, PlaceTask } from '../model/place/tasks';
import { answerAsks } from './answerAsks';
import { runPlaceTask } from './placeTask';

let solver: Promise<SolveMilp> | null = null;

/** The solver's three megabytes come with the first question. */
async function loadSolver(): Promise<SolveMilp> {
  const [{ default: loadHighs }, { default: wasmUrl }, { highsMilp }] = await Promise.all([
    import('highs'),
    import('highs/runtime?url'),
    import('./highsMilp'),
  ]);
  return highsMilp(await loadHighs({ locateFile: () => wasmUrl }));
}

const notFetched = (error: unknown) =>
  new Error(
    `the solver, three megabytes that come when they are first needed, could not be fetched. The server has stopped or is out of reach: try again when it runs. (${error instanceof Error ? error.message.split('\n')[0] : String(error)})`,
  );

answerAsks(async (task: PlaceTask, onProgress: (progress: PlaceProgress) => void) => {
  solver ??= loadSolver().catch((error: unknown) => {
    // Asked again, it is fetched again.
    solver = null;
    throw notFetched(error);
  });
  return runPlaceTask(task, await solver, () => performance.now(), onProgress);
});
