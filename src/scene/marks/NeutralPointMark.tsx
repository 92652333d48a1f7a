import { useMemo, useRef } from 'react';
import type { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { useLive } from '../../store/react';
import { useGroundMm } from '../frame/useGround';
import { FatLines, moveLines } from '../materials/FatLines';
import { neutralPointMm } from './stageWords';

/** Beyond the picture's edge, mm. */
const FAR_MM = 30_000;
/** Half the tick across the rule, mm. */
const TICK_MM = 34;

/** The estimated neutral point: its line down to the rule. */
export function NeutralPointMark() {
  const groundMm = useGroundMm();
  const line = useRef<LineSegments2>(null);
  const halo = useRef<LineSegments2>(null);
  const spare = useMemo(() => new Float32Array(12), []);

  useLive((live) => {
    const at = neutralPointMm(live);
    const { view } = live.view.getState();
    for (const drawn of [line.current, halo.current]) {
      if (!drawn) continue;
      drawn.visible = at !== null && view !== 'front';
      drawn.material.opacity =
        (drawn === line.current ? 0.95 : 0.35) * (live.stability.get().fresh ? 1 : 0.4);
      if (!at) continue;
      const [x, y, z] = at;
      const free = view === 'free';
      const foot = view === 'top' ? [x, -FAR_MM, z] : [x, y, free ? groundMm : -FAR_MM];
      const tick = free ? [x, -TICK_MM, groundMm, x, TICK_MM, groundMm] : [x, y, z, x, y, z];
      moveLines(drawn, [x, y, z, ...foot, ...tick]);
    }
  });

  return (
    <>
      <FatLines
        ref={halo}
        pairs={spare}
        moving
        color="#0b1218"
        widthPx={3.4}
        opacity={0.35}
        depthTest={false}
        renderOrder={36}
      />
      <FatLines
        ref={line}
        pairs={spare}
        moving
        color="#ffffff"
        widthPx={1.2}
        opacity={0.95}
        depthTest={false}
        renderOrder={37}
      />
    </>
  );
}
