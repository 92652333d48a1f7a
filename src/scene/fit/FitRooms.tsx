import { useMemo } from 'react';
import { hatchCorners } from '../../model/fit/hatchWalls';
import { useCommitted, useFit, useView } from '../../store/react';
import { FatLines } from '../materials/FatLines';
import { usePalette } from '../materials/palette';
import { bayPairs, throughPairs } from './fitLines';

const DASH_MM = 8;

/** Bays as dashed boxes when a part is selected or they are being edited; hatches as outlines on the hull. */
export function FitRooms() {
  const palette = usePalette();
  const shown = useFit((fit) => fit.roomsShown);
  const selectedId = useView((view) => view.selectedId);
  const bays = useCommitted((aircraft) => aircraft.bays);
  const hatches = useCommitted((aircraft) => aircraft.hatches);
  const isPart = useCommitted(({ parts }) => parts.some(({ id }) => id === selectedId));
  const ownId = useCommitted(({ parts }) => parts.find(({ id }) => id === selectedId)?.bayId);
  const bayLines = useMemo(() => {
    const drawn = (bays ?? []).filter(({ id }) => shown || ownId === undefined || id === ownId);
    return new Float32Array(drawn.flatMap((bay) => bayPairs(bay, DASH_MM)));
  }, [bays, ownId, shown]);
  const hatchLines = useMemo(
    () =>
      new Float32Array(
        (hatches ?? []).flatMap((hatch) => {
          const corners = hatchCorners(hatch);
          return throughPairs([...corners, ...corners.slice(0, 1)]);
        }),
      ),
    [hatches],
  );
  return (
    <>
      {bayLines.length > 0 && (
        <FatLines
          key={`bays ${bayLines.length}`}
          pairs={bayLines}
          color={palette.matRule}
          widthPx={shown || ownId !== undefined ? 1.5 : 1}
          opacity={shown || ownId !== undefined ? 0.95 : 0.6}
          visible={shown || isPart}
          depthTest={false}
          renderOrder={27}
        />
      )}
      {hatchLines.length > 0 && (
        <FatLines
          pairs={hatchLines}
          color={shown ? palette.band : palette.pencil}
          widthPx={shown ? 2 : 1.2}
          opacity={shown ? 1 : 0.6}
          renderOrder={25}
          depthTest={false}
        />
      )}
    </>
  );
}
