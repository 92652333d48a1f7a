import { entryThroughAny } from '../model/fit/entryThroughAny';
import { fittingOrder } from '../model/fit/fittingOrder';
import { wholeFit } from '../model/fit/wholeFit';
import { answerAsks } from './answerAsks';
import type { FitAnswer, FitTask } from './fitTask';

answerAsks((task: FitTask): FitAnswer => {
  switch (task.task) {
    case 'entry':
      return entryThroughAny(task.aircraft, task.itemId);
    case 'order':
      return fittingOrder(task.aircraft);
    case 'whole':
      return wholeFit(task.aircraft).problems;
  }
});
