import type { Vec3 } from '../geometry/types';
import type { PlaceProblem } from './types';

/** The option of a part that stays where it is. */
export const STAY = 'stay';

/** The same problem with staying as an option of its own, so that moves can be counted. */
export function withStays(problem: PlaceProblem): PlaceProblem {
  return {
    ...problem,
    parts: problem.parts.map((part) => {
      const { centreMm: at, optionId } = part.present;
      const option = part.options.find(({ id }) => id === optionId);
      if (!option) return part;
      const corner = (side: 1 | -1): Vec3 => [
        at[0] + (side * option.sizeMm[0]) / 2,
        at[1] + (side * option.sizeMm[1]) / 2,
        at[2] + (side * option.sizeMm[2]) / 2,
      ];
      const stay = { ...option, id: STAY, region: { minMm: corner(-1), maxMm: corner(1) } };
      return { ...part, options: [...part.options, stay] };
    }),
  };
}
