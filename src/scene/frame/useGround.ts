import { useMemo } from 'react';
import type { Vec3 } from '../../engine/geometry/types';
import { perObject } from '../../engine/memory/memory';
import { aircraftExtent, type Extent, itemExtent, pieceExtent } from '../../model/airframe/extent';
import { pieces } from '../../model/airframe/pieces';
import type { Aircraft } from '../../model/document/types';
import { useCommitted, useSteadyList } from '../../store/react';

/** The box around everything aboard, worked out once for each aircraft. */
export const extentOnce = perObject(aircraftExtent);

/** The corners of the box around each piece and each thing aboard: a closer fit than the one box around all. */
export const cornersOnce = perObject((aircraft: Aircraft): readonly Vec3[] => {
  const boxes = [
    ...pieces(aircraft).map(pieceExtent),
    ...[...aircraft.parts, ...aircraft.tanks].map(itemExtent),
  ];
  return (boxes.length > 0 ? boxes : [extentOnce(aircraft)]).flatMap(cornersOf);
});

const cornersOf = ({ minMm, maxMm }: Extent): Vec3[] =>
  [minMm[0], maxMm[0]].flatMap((x) =>
    [minMm[1], maxMm[1]].flatMap((y) => [minMm[2], maxMm[2]].map((z): Vec3 => [x, y, z])),
  );

/** The mat lies under the lowest point, mm. */
export const useGroundMm = (): number => useCommitted((aircraft) => extentOnce(aircraft).minMm[2]);

/** The box around the aircraft as committed; renders again only when one of its six figures changes. */
export function useExtent(): Extent {
  const [minMm, maxMm] = useCommitted(
    useSteadyList((aircraft: Aircraft) => {
      const extent = extentOnce(aircraft);
      return [extent.minMm, extent.maxMm];
    }),
  );
  return useMemo(() => ({ minMm: minMm!, maxMm: maxMm! }), [minMm, maxMm]);
}
