import type { Around } from '../../engine/place/leadShares';
import type { Place } from '../../engine/place/nextSteps';
import { arrangementOf } from '../../engine/place/settlePlaces';
import type { Arrangement, PlaceProblem } from '../../engine/place/types';
import type { Part } from '../document/types';
import { emptiedId } from './ballastPlaces';

/** Everything where it stands now; null where a part's place is in none of its options. */
export function asPresent({ parts }: PlaceProblem): Around | null {
  const places = parts.flatMap(({ options, present }): Place[] => {
    const option = options.findIndex(({ id }) => id === present.optionId);
    return option >= 0 ? [{ option, centreMm: present.centreMm }] : [];
  });
  return places.length === parts.length ? places : null;
}

/**
 * Everything where it is, with the ballast that was taken out put back, where that is sound: what any search starts from and
 * need not fall behind. Null where it is not, or where that ballast comes in no step of its spot.
 */
export function asBefore(problem: PlaceProblem, emptied: readonly Part[]): Arrangement | null {
  const places = asPresent(problem);
  const gramsG = problem.spots.map(({ id }) => {
    const was = emptied.find((part) => emptiedId(id) === part.id);
    return was ? Math.floor(was.massG) : 0;
  });
  return places && arrangementOf(problem, places, gramsG);
}
