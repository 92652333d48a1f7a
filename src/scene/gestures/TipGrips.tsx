import { useMemo, useRef } from 'react';
import type { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { useLive } from '../../store/react';
import { FatLines, moveLines } from '../materials/FatLines';
import { grips } from './tipGrip';

/** Chords that can be shown at once. */
const MOST = 12;
/** Reads on the mat in either theme. */
const ON_MAT = '#ffb366';

/** The tip chords by which a surface can be swept, drawn as bars that ask to be taken hold of. */
export function TipGrips() {
  const lines = useRef<LineSegments2>(null);
  const spare = useMemo(() => new Float32Array(6 * MOST), []);
  useLive((bench) => {
    if (!lines.current) return;
    const chords = grips(bench).slice(0, MOST);
    lines.current.visible = chords.length > 0;
    moveLines(
      lines.current,
      chords.flatMap(({ frontMm, rearMm }) => [...frontMm, ...rearMm]),
    );
  });
  return (
    <FatLines
      ref={lines}
      pairs={spare}
      moving
      color={ON_MAT}
      widthPx={4}
      opacity={0.95}
      depthTest={false}
      renderOrder={39}
    />
  );
}
