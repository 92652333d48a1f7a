import fuelInTheClimb from '../demo-data/lessons/fuel-in-the-climb.json';
import headerTank from '../demo-data/lessons/header-tank.json';
import inertiaAndGyro from '../demo-data/lessons/inertia-and-gyro.json';
import kitchenScale from '../demo-data/lessons/kitchen-scale.json';
import neutralPoint from '../demo-data/lessons/neutral-point.json';
import noseGrams from '../demo-data/lessons/nose-grams.json';
import offsetCamera from '../demo-data/lessons/offset-camera.json';
import seeSaw from '../demo-data/lessons/see-saw.json';
import tankAhead from '../demo-data/lessons/tank-ahead.json';
import { readLesson } from './model/lessons/readLesson';
import type { ListedLesson } from './panels/lessonActions';

/** In the order of their list. */
const files: readonly unknown[] = [
  seeSaw,
  noseGrams,
  tankAhead,
  headerTank,
  fuelInTheClimb,
  offsetCamera,
  neutralPoint,
  inertiaAndGyro,
  kitchenScale,
];

/** The lessons that come with the bench. */
export const builtInLessons = (): readonly ListedLesson[] =>
  files.map((json) => {
    const read = readLesson(json);
    if (!read.ok) throw new Error(`A lesson does not read: ${read.faults[0]?.sentence}`);
    return { key: read.lesson.id, lesson: read.lesson, isOwn: false };
  });
