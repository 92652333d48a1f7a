import { entryThroughAny } from '../model/fit/entryThroughAny';
import { fittingOrder } from '../model/fit/fittingOrder';
import { answerAsks } from './answerAsks';
import type { FitAnswer, FitTask } from './fitTask';

answerAsks(
  (task: FitTask): FitAnswer =>
    task.task === 'entry' ? entryThroughAny(task.aircraft, task.itemId) : fittingOrder(task.aircraft),
);
