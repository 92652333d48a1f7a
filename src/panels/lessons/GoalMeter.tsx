import type { LessonBench } from '../../model/lessons/bench';
import { measuredBy } from '../../model/lessons/goals';
import { figureAt } from '../../model/lessons/quantity';
import type { Change, Goal } from '../../model/lessons/types';

interface GoalMeterProps {
  readonly goal: Goal;
  readonly way: readonly Change[];
  readonly from: LessonBench;
  readonly now: LessonBench;
  readonly done: boolean;
}

/** How near the goal of a step is, as a bar that fills. */
export function GoalMeter({ goal, way, from, now, done }: GoalMeterProps) {
  const share = done ? 1 : Math.min(0.98, shareOf(goal, way, from, now));
  return (
    <progress
      className="lesson-meter"
      value={Math.round(share * 100)}
      max={100}
      aria-label="How near the goal is"
    />
  );
}

/** 0 where the step began, 1 at its goal; the least of all that it is about. */
function shareOf(goal: Goal, way: readonly Change[], from: LessonBench, now: LessonBench): number {
  const all =
    goal.by === 'reach' ? reachOf(goal, from, now) : way.flatMap((change) => measuredBy(change, from, now));
  const shares = all
    .filter(({ was, shall }) => was !== shall)
    .map(({ was, is, shall }) => 1 - Math.abs(is - shall) / Math.abs(was - shall));
  const least = Math.min(...shares);
  return Number.isFinite(least) ? Math.max(0, least) : 0;
}

function reachOf(goal: Extract<Goal, { readonly by: 'reach' }>, from: LessonBench, now: LessonBench) {
  // The neutral point is the worker's; a bar need not wait for it.
  const was = figureAt(from, goal.quantity, () => null);
  const is = figureAt(now, goal.quantity, () => null);
  if (was === null || is === null) return [];
  const { least = -Infinity, most = Infinity } = goal;
  return [{ was, is, shall: Math.min(most, Math.max(least, was)) }];
}
