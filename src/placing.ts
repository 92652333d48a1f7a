import { itemZone } from './model/place/itemZone';
import type { PlaceParts } from './store/placeStore';
import { placeSolver } from './workers/placeSolver';

/** Placing, which the bench can show without. */
export const placing: PlaceParts = {
  itemZone,
  solve: placeSolver(
    () => new Worker(new URL('./workers/place.worker.ts', import.meta.url), { type: 'module' }),
  ),
};
