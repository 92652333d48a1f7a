import { clearMove } from './model/fit/clearMove';
import { nearestRoom } from './model/fit/roomAt';
import { wholeFit } from './model/fit/wholeFit';
import { problemShort } from './model/words/fitWords';
import type { FitJudge } from './store/fitStore';

/** The judgement of fit, which the bench can show without. */
export const judging: FitJudge = { wholeFit, clearMove, nearestRoom, shortWords: problemShort };
