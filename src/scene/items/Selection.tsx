import { useMemo, useRef } from 'react';
import type { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { itemById } from '../../model/document/edit';
import { useLive } from '../../store/react';
import { useGroundMm } from '../frame/useGround';
import { FatLines, moveLines } from '../materials/FatLines';

const FAR_MM = 30_000;
const TICK_MM = 26;
/** Reads on the mat in either theme. */
const ON_MAT = '#ffb366';

/** From the selected item a line down to the mat and across to the rule; in elevations down to the beam. */
export function Selection() {
  const groundMm = useGroundMm();
  const lines = useRef<LineSegments2>(null);
  const spare = useMemo(() => new Float32Array(24), []);

  useLive(({ document, view }) => {
    const { selectedId, view: looking } = view.getState();
    const item = selectedId ? itemById(document.current(), selectedId) : undefined;
    if (!lines.current) return;
    lines.current.visible = item !== undefined;
    if (!item) return;
    const [x, y, z] = item.positionMm;
    if (looking === 'free') {
      moveLines(lines.current, [
        ...[x, y, z, x, y, groundMm],
        ...[x, y, groundMm, x, 0, groundMm],
        ...[x - TICK_MM / 2, y, groundMm, x + TICK_MM / 2, y, groundMm],
        ...[x, -TICK_MM, groundMm, x, TICK_MM, groundMm],
      ]);
    } else {
      moveLines(lines.current, [x, y, z, ...(looking === 'top' ? [x, -FAR_MM, z] : [x, y, -FAR_MM])]);
    }
  });

  return (
    <FatLines
      ref={lines}
      pairs={spare}
      moving
      color={ON_MAT}
      widthPx={1.6}
      opacity={0.95}
      depthTest={false}
      renderOrder={38}
    />
  );
}
