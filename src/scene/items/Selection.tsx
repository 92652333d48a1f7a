import { useMemo, useRef } from 'react';
import type { Group } from 'three';
import type { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { LEVEL } from '../../model/balance/balance';
import { itemById } from '../../model/document/edit';
import { useAircraft, useLive, useSteadyList, useView } from '../../store/react';
import type { ViewState } from '../../store/viewStore';
import { writePoseTurn } from '../frame/frame';
import { useGroundMm } from '../frame/useGround';
import { FatLines, moveLines } from '../materials/FatLines';
import { usePalette } from '../materials/palette';
import { shapeLinePairs } from '../materials/shapeGeometry';

const FAR_MM = 30_000;
const TICK_MM = 26;
/** Reads on the mat in either theme. */
const ON_MAT = '#ffb366';

/** From the selected item a line down to the mat and across to the rule; in elevations down to the beam. */
export function Selection() {
  const groundMm = useGroundMm();
  const selectedId = useView((state) => state.selectedId);
  const others = useView(useSteadyList(chosenBeside));
  const lines = useRef<LineSegments2>(null);
  const spare = useMemo(() => new Float32Array(24), []);

  useLive(({ document, view }) => {
    const { selectedId, view: looking, down } = view.getState();
    const item = selectedId ? itemById(document.current(), selectedId) : undefined;
    if (!lines.current) return;
    // It stands on the rule of the level mat only.
    lines.current.visible = item !== undefined && (looking !== 'free' || down === LEVEL);
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
    <>
      {selectedId !== null && <ChosenOutline id={selectedId} />}
      {others.map((id) => (
        <ChosenOutline key={id} id={id} />
      ))}
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
    </>
  );
}

/** What is chosen together with the selected thing. */
const chosenBeside = ({ groupIds, selectedId }: ViewState) => groupIds.filter((id) => id !== selectedId);

/** A chosen part or tank in ink, wherever it stands. */
function ChosenOutline({ id }: { readonly id: string }) {
  const { dark } = usePalette();
  const shape = useAircraft((aircraft) => itemById(aircraft, id)?.shape);
  const mirrored = useAircraft(({ tanks }) => tanks.some((tank) => tank.id === id && tank.mirrored === true));
  const pairs = useMemo(() => (shape ? shapeLinePairs(shape) : new Float32Array(6)), [shape]);
  const group = useRef<Group>(null);
  useLive(({ document, view }) => {
    const item = itemById(document.current(), id);
    if (!group.current || !item) return;
    group.current.position.set(...item.positionMm);
    writePoseTurn(item, group.current.quaternion);
    group.current.visible = !view.getState().looking.exploded;
  });
  if (!shape) return null;
  return (
    <group ref={group} scale={[1, mirrored ? -1 : 1, 1]}>
      <FatLines pairs={pairs} color={dark ? '#ffffff' : '#0c141b'} widthPx={2} renderOrder={24} moving />
    </group>
  );
}
