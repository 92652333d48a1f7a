import { arrange } from '../engine/place/arrange';
import type { SolveMilp } from '../engine/place/milp';
import { arrangeSurely } from '../engine/place/robust';
import { ballastForMargin, ballastForMoves } from '../engine/place/tradeOff';
import { whyNot } from '../engine/place/whyNot';
import type { PlaceAnswers, PlaceProgress, PlaceTask } from '../model/place/tasks';

/** Does one task. Progress is the best arrangement so far, or the points of a curve one by one. */
export function runPlaceTask(
  task: PlaceTask,
  solve: SolveMilp,
  now: () => number,
  onProgress: (progress: PlaceProgress) => void,
): PlaceAnswers[PlaceTask['task']] {
  const order = { solve, now, timeMs: task.timeMs };
  switch (task.task) {
    case 'arrange':
      return arrange(task.problem, { ...order, onProgress });
    case 'why not':
      return whyNot(task.problem, task.lifts, order);
    case 'ballast for margin':
      return ballastForMargin(task.problem, task.points, { ...order, onPoint: onProgress });
    case 'ballast for moves':
      return ballastForMoves(task.problem, { ...order, onPoint: onProgress });
    case 'surely':
      return arrangeSurely(task.problem, task.sigmaMm, task.probability, order);
  }
}
