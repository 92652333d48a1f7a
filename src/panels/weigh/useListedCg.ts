import type { Vec3 } from '../../engine/geometry/types';
import { lastPerObject } from '../../engine/memory/memory';
import type { Aircraft, WeighIn } from '../../model/document/types';
import { thoughtAt } from '../../model/weigh/thought';
import { weighInById } from '../../model/weigh/weighIns';
import { useCommitted } from '../../store/react';

const listedCg = lastPerObject(
  (entry: WeighIn, aircraft: Aircraft): Vec3 | null => thoughtAt(aircraft, entry).balance.cgMm,
);

/** Where the list has the CG in the load state of a weigh-in, whether that is finished or not. */
export const useListedCg = (id: string): Vec3 | null =>
  useCommitted((aircraft) => {
    const entry = weighInById(aircraft, id);
    return entry ? listedCg(entry, aircraft) : null;
  });
