import { clearMove } from './model/fit/clearMove';
import { nearestRoom } from './model/fit/roomAt';
import { isSoonJudged, takeJudged, wholeFit } from './model/fit/wholeFit';
import { problemShort } from './model/words/fitWords';
import type { FitJudge } from './store/fitStore';

/** The judgement of fit, which the bench can show without. */
export const judging: FitJudge = {
  wholeFit,
  isSoonJudged,
  takeJudged,
  clearMove,
  nearestRoom,
  shortWords: problemShort,
};
