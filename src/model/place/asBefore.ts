import { arrangementOf } from '../../engine/place/settlePlaces';
import type { Arrangement, PlaceProblem } from '../../engine/place/types';
import type { Part } from '../document/types';
import { emptiedId } from './ballastPlaces';

/**
 * Everything where it is, with the ballast that was taken out put back, where that is sound: what any search starts from and
 * need not fall behind. Null where it is not, or where that ballast comes in no step of its spot.
 */
export function asBefore(problem: PlaceProblem, emptied: readonly Part[]): Arrangement | null {
  const places = problem.parts.map(({ options, present }) => ({
    option: options.findIndex(({ id }) => id === present.optionId),
    centreMm: present.centreMm,
  }));
  if (places.some(({ option }) => option < 0)) return null;
  const gramsG = problem.spots.map(({ id }) => {
    const was = emptied.find((part) => emptiedId(id) === part.id);
    return was ? Math.floor(was.massG) : 0;
  });
  return arrangementOf(problem, places, gramsG);
}
