import type { SolveMilp } from '../engine/place/milp';
import type { PlaceAsk, PlaceReply } from './placeMessages';
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

addEventListener('message', async ({ data: { id, task } }: MessageEvent<PlaceAsk>) => {
  const post = (reply: PlaceReply) => postMessage(reply);
  try {
    solver ??= loadSolver().catch((error: unknown) => {
      // Asked again, it is fetched again.
      solver = null;
      throw notFetched(error);
    });
    const now = () => performance.now();
    const answer = runPlaceTask(task, await solver, now, (progress) =>
      post({ id, kind: 'progress', progress }),
    );
    post({ id, kind: 'answer', answer });
  } catch (error) {
    post({ id, kind: 'failed', sentence: error instanceof Error ? error.message : String(error) });
  }
});
