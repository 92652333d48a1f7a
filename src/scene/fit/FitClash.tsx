import { useMemo, useRef } from 'react';
import type { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { mirrorY } from '../../engine/geometry/vec3';
import { perObject } from '../../engine/memory/memory';
import { orientedBox } from '../../model/airframe/extent';
import { inLoadState } from '../../model/airframe/loadSwitches';
import { type Piece, pieces } from '../../model/airframe/pieces';
import { type Item, itemById } from '../../model/document/edit';
import type { Aircraft } from '../../model/document/types';
import { useLive } from '../../store/react';
import { FatLines, moveLines } from '../materials/FatLines';
import { boxPairs } from './fitLines';
import { problemsNow } from './fitReadings';

/** Boxes that can be shown at once. */
const MOST = 8;
const PER_BOX = 12 * 6;

/**
 * A frame in red about each tank and piece of structure that something runs into in the load state shown, whatever is
 * selected; parts are hatched in their own faces.
 */
export function FitClash() {
  const lines = useRef<LineSegments2>(null);
  const spare = useMemo(() => new Float32Array(MOST * PER_BOX), []);
  useLive((bench) => {
    if (!lines.current) return;
    const aircraft = bench.document.current();
    const { hiddenIds, positions } = bench.view.getState();
    const framed = new Map(
      problemsNow(bench)
        .flatMap(({ parties }) => parties)
        .filter(({ what, id }) => (what === 'tank' || what === 'structure') && !hiddenIds.includes(id))
        .map((party) => [party.pieceId, party]),
    );
    const shown = inLoadState(aircraft, positions);
    const pairs = [...framed.keys()].slice(0, MOST).flatMap((pieceId) => frameOf(shown, pieceId));
    lines.current.visible = pairs.length > 0;
    if (pairs.length > 0) moveLines(lines.current, pairs);
  });
  return (
    <FatLines
      ref={lines}
      pairs={spare}
      moving
      color="#ff6a5a"
      widthPx={2.2}
      depthTest={false}
      renderOrder={39}
    />
  );
}

/** The edges of the box about a tank or a piece of structure. */
function frameOf(aircraft: Aircraft, id: string): readonly number[] {
  const item = itemById(aircraft, id);
  if (item) return itemFrame(item);
  const piece = pieces(aircraft).find((each) => each.id === id);
  return piece ? pieceFrame(piece) : [];
}

const itemFrame = perObject((item: Item) => boxPairs(orientedBox(item)));

const pieceFrame = perObject((piece: Piece): readonly number[] => {
  const pairs = boxPairs(orientedBox({ ...piece.pose, shape: piece.shape }));
  if (!piece.mirrored) return pairs;
  return Array.from({ length: pairs.length / 3 }, (_, i) =>
    mirrorY([pairs[3 * i] ?? 0, pairs[3 * i + 1] ?? 0, pairs[3 * i + 2] ?? 0]),
  ).flat();
});
