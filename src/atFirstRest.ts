import { certaintyOf } from './model/balance/certainty';
import { itemZone } from './model/place/itemZone';
import type { PlaceParts } from './store/placeStore';
import { placeSolver } from './workers/placeSolver';
import { watched } from './workers/watched';

/** How long the solver may be silent beyond the time a search is given, s. */
const SILENT_S = 90;

/** Placing, which the bench can show without. */
export const placing: PlaceParts = {
  itemZone,
  solve: placeSolver(
    watched(
      () => new Worker(new URL('./workers/place.worker.ts', import.meta.url), { type: 'module' }),
      SILENT_S,
    ),
  ),
};

export { certaintyOf };
