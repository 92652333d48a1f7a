import { useMemo, useRef } from 'react';
import type { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { supplyPaths } from '../../model/power/supplyPaths';
import { useLive } from '../../store/react';
import { FatLines, moveLines } from '../materials/FatLines';
import { throughPairs } from './fitLines';

/** So many stretches can be drawn. */
const MOST = 600 * 6;
const LIVE = '#ffb25c';

/** What the selected pack, regulator or receiver feeds: thin lines to all that hangs on it. */
export function SupplyWires() {
  const lines = useRef<LineSegments2>(null);
  const spare = useMemo(() => new Float32Array(MOST), []);
  useLive(({ document, view }) => {
    const { selectedId, hiddenIds } = view.getState();
    const seen = selectedId !== null && !hiddenIds.includes(selectedId);
    const pairs = seen ? supplyPaths(document.current(), selectedId).flatMap(throughPairs) : [];
    if (!lines.current) return;
    lines.current.visible = pairs.length > 0;
    if (pairs.length > 0) moveLines(lines.current, pairs.slice(0, MOST));
  });
  return (
    <FatLines
      ref={lines}
      pairs={spare}
      color={LIVE}
      widthPx={1.6}
      opacity={0.85}
      moving
      depthTest={false}
      renderOrder={27}
    />
  );
}
