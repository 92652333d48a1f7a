import type { Vec3 } from '../geometry/types';
import { centreRange } from './regions';
import { SAME_MM } from './tolerances';
import type { PlaceOption } from './types';

/** The option that a part stands in, unturned, with its centre at a point of the aircraft's frame, mm, if any. */
export const optionAt = (options: readonly PlaceOption[], centreMm: Vec3): PlaceOption | undefined =>
  options.find(
    (option) =>
      option.turnedTo === undefined &&
      ([0, 1, 2] as const).every((axis) => {
        const { lowMm, highMm } = centreRange(option, axis);
        return centreMm[axis] >= lowMm - SAME_MM && centreMm[axis] <= highMm + SAME_MM;
      }),
  );
