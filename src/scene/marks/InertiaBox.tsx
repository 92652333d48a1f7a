import { useMemo, useRef } from 'react';
import type { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { type EquivalentBox, equivalentBox } from '../../engine/balance/inertiaForPeople';
import type { Vec3 } from '../../engine/geometry/types';
import { addScaled } from '../../engine/geometry/vec3';
import { useLive, useView } from '../../store/react';
import { layerShown } from '../../store/viewStore';
import { FatLines, moveLines } from '../materials/FatLines';

/** Which corners an edge joins: each axis in turn, along it from low to high, at the four corners of the other two. */
const EDGES = [0, 1, 2].flatMap((along) =>
  [-1, 1].flatMap((u) =>
    [-1, 1].map((v) => {
      const corner = (end: -1 | 1) => {
        const signs = [0, 0, 0];
        signs[along] = end;
        signs[(along + 1) % 3] = u;
        signs[(along + 2) % 3] = v;
        return signs as [number, number, number];
      };
      return [corner(-1), corner(1)] as const;
    }),
  ),
);
/** The axes stand this far out of the box, as a share of its half. */
const OUT = 1.15;

/** The uniform box with the mass, CG and inertia of the whole aircraft, and its principal axes. */
export function InertiaBox() {
  const shown = useView((view) => layerShown(view, 'inertia'));
  const box = useRef<LineSegments2>(null);
  const shade = useRef<LineSegments2>(null);
  const axes = useRef<LineSegments2>(null);
  const edgePairs = useMemo(() => new Float32Array(EDGES.length * 6), []);
  const axisPairs = useMemo(() => new Float32Array(18), []);

  useLive(({ balance, view }) => {
    const equal = layerShown(view.getState(), 'inertia') ? equivalentBox(balance.get()) : null;
    if (!box.current || !shade.current || !axes.current) return;
    box.current.visible = shade.current.visible = axes.current.visible = equal !== null;
    if (!equal) return;
    const edges = EDGES.flatMap(([from, to]) => [...cornerOf(equal, from), ...cornerOf(equal, to)]);
    moveLines(box.current, edges);
    moveLines(shade.current, edges);
    moveLines(
      axes.current,
      [0, 1, 2].flatMap((axis) =>
        ([-OUT, OUT] as const).flatMap((end) => {
          const signs: [number, number, number] = [0, 0, 0];
          signs[axis] = end;
          return cornerOf(equal, signs);
        }),
      ),
    );
  });

  if (!shown) return null;
  const drawn = { moving: true, depthTest: false } as const;
  return (
    <>
      <FatLines
        ref={shade}
        pairs={edgePairs}
        color="#0b1218"
        widthPx={4.5}
        opacity={0.4}
        renderOrder={36}
        {...drawn}
      />
      <FatLines
        ref={axes}
        pairs={axisPairs}
        color="#ffffff"
        widthPx={1}
        opacity={0.7}
        renderOrder={37}
        {...drawn}
      />
      <FatLines ref={box} pairs={edgePairs} color="#ffffff" widthPx={1.8} renderOrder={38} {...drawn} />
    </>
  );
}

/** A corner of the box, mm: its centre and so many half sides along each axis. */
const cornerOf = (
  { centreMm, sidesMm, axes }: EquivalentBox,
  signs: readonly [number, number, number],
): Vec3 =>
  axes.reduce<Vec3>(
    (at, axis, i) => addScaled(at, axis, ((signs[i] ?? 0) * (sidesMm[i] ?? 0)) / 2),
    centreMm,
  );
