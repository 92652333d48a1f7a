import { certaintyOf } from './model/balance/certainty';
import { itemZone } from './model/place/itemZone';
import type { PlaceProgress, PlaceTask } from './model/place/tasks';
import type { PlaceParts } from './store/placeStore';
import { type PlaceAnswer, placeSolver } from './workers/placeSolver';
import { workerClient } from './workers/workerClient';

/** The solver may be silent for as long as a search is given, and some time beyond. */
const askPlace = workerClient<PlaceTask, PlaceAnswer, PlaceProgress>(
  () => new Worker(new URL('./workers/place.worker.ts', import.meta.url), { type: 'module' }),
  { search: 'The search for a place', purpose: 'placing', silentS: 90 },
);

/** Placing, which the bench can show without. */
export const placing: PlaceParts = { itemZone, solve: placeSolver(askPlace) };

export { certaintyOf };
