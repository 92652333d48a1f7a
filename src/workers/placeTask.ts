import type { SolveMilp } from '../engine/place/milp';
import { whyNot } from '../engine/place/whyNot';
import { choicesForMargin, choicesForMoves } from '../model/place/searchChoices';
import { searchPlaces } from '../model/place/searchPlaces';
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
    case 'search':
      return searchPlaces(task.request, { ...order, onProgress });
    case 'why not':
      return whyNot(task.problem, task.lifts, order);
    case 'ballast for margin':
      return choicesForMargin(task.ask, task.points, { ...order, onPoint: onProgress });
    case 'ballast for moves':
      return choicesForMoves(task.ask, { ...order, onPoint: onProgress });
  }
}
