import { useMemo, useRef } from 'react';
import { Color } from 'three';
import type { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { useLive } from '../../store/react';
import { FatLines, moveLines } from '../materials/FatLines';
import { dimensionPairs } from './fitLines';
import { drawnClearance } from './fitReadings';

const CLEAR = new Color('#ffffff');
const CLASH = new Color('#ff8a7d');
/** The line and two crosses, pairs of points. */
const MOST = 5 * 6;

/** The smallest distance of what is in hand or selected, as a dimension line between its two points. */
export function FitDimension() {
  const line = useRef<LineSegments2>(null);
  const halo = useRef<LineSegments2>(null);
  const spare = useMemo(() => new Float32Array(MOST), []);
  useLive((bench) => {
    const clearance = drawnClearance(bench);
    for (const lines of [line.current, halo.current]) {
      if (!lines) continue;
      lines.visible = clearance !== null;
      if (clearance) moveLines(lines, dimensionPairs(...clearance.pointsMm));
    }
    line.current?.material.color.copy((clearance?.distanceMm ?? 0) < 0 ? CLASH : CLEAR);
  });
  const drawn = { pairs: spare, moving: true, depthTest: false } as const;
  return (
    <>
      <FatLines ref={halo} color="#0b1218" widthPx={4} opacity={0.6} renderOrder={40} {...drawn} />
      <FatLines ref={line} color="#ffffff" widthPx={1.6} renderOrder={41} {...drawn} />
    </>
  );
}
