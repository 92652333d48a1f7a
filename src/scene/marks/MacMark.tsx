import { useMemo, useRef } from 'react';
import type { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { type Planform, pctMacToStation } from '../../engine/wing/planform';
import { wingPlanform } from '../../model/stability/band';
import { useLive } from '../../store/react';
import { layerShown } from '../../store/viewStore';
import { FatLines, moveLines } from '../materials/FatLines';
import { usePalette } from '../materials/palette';

/** Half the length of the ticks at either end, and of those at the quarters, as shares of the MAC. */
const END_SHARE = 0.09;
const QUARTER_SHARE = 0.045;
/** A chord and five ticks on either half, six figures each. */
const FIGURES = 2 * 6 * 6;

/** The chord of the MAC on one half with its leading edge and its quarters ticked, in pairs of points, mm. */
function macPairs({ macMm, lemacMm, macButtlineMm, macWaterlineMm: z }: Planform, side: 1 | -1): number[] {
  const y = side * macButtlineMm;
  const tick = (pct: number, share: number) => {
    const x = pctMacToStation({ macMm, lemacMm }, pct);
    return [x, y - share * macMm, z, x, y + share * macMm, z];
  };
  return [
    ...[lemacMm, y, z, lemacMm + macMm, y, z],
    ...[0, 100].flatMap((pct) => tick(pct, END_SHARE)),
    ...[25, 50, 75].flatMap((pct) => tick(pct, QUARTER_SHARE)),
  ];
}

/** The mean aerodynamic chord, drawn where it lies on both halves of the wing. */
export function MacMark() {
  const { pencil, vellum, dark } = usePalette();
  const halo = useRef<LineSegments2>(null);
  const lines = useRef<LineSegments2>(null);
  const spare = useMemo(() => new Float32Array(FIGURES), []);

  useLive(({ document, view }) => {
    const wing = wingPlanform(document.current());
    const { view: looking } = view.getState();
    const seen =
      wing !== null && layerShown(view.getState(), 'stability') && (looking === 'top' || looking === 'free');
    const pairs = seen ? [...macPairs(wing, 1), ...macPairs(wing, -1)] : [];
    for (const drawn of [halo.current, lines.current]) {
      if (!drawn) continue;
      drawn.visible = seen;
      if (seen) moveLines(drawn, pairs);
    }
  });

  return (
    <>
      <FatLines
        ref={halo}
        pairs={spare}
        moving
        color={dark ? '#0b1218' : vellum}
        widthPx={4}
        opacity={0.4}
        depthTest={false}
        renderOrder={34}
      />
      <FatLines
        ref={lines}
        pairs={spare}
        moving
        color={pencil}
        widthPx={1.5}
        opacity={0.85}
        depthTest={false}
        renderOrder={35}
      />
    </>
  );
}
