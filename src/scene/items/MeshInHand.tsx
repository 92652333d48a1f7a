import { useMemo } from 'react';
import { BufferAttribute, BufferGeometry, DoubleSide, Mesh, MeshStandardMaterial } from 'three';
import type { Vec3 } from '../../engine/geometry/types';
import type { ReadMesh } from '../../model/airframe/meshReading';
import { meshShift } from '../../model/airframe/ownMesh';
import type { MeshInHand as InHand } from '../../store/meshStore';
import { useBalance, useBench, useCommitted, useMeshInHand } from '../../store/react';
import { FatLines } from '../materials/FatLines';
import { usePalette } from '../materials/palette';
import { useDisposed } from '../materials/useDisposed';

/** In front of everything but the marks of the CG. */
const OVER_PARTS = 36;
/** Reads on the mat in either theme, and apart from the aircraft's own skin. */
const LOOKED_AT = '#ffb366';
/** Half the size of the cross at a place where a skin cuts itself, mm. */
const CROSS_MM = 6;

/** The mesh that is being looked at, where it would stand; the rims of its holes and where it cuts itself over it. */
export function MeshInHand() {
  const inHand = useMeshInHand();
  return inHand?.read?.ok ? <Shown inHand={inHand} read={inHand.read} /> : null;
}

function Shown({ inHand, read }: { readonly inHand: InHand; readonly read: ReadMesh }) {
  const bench = useBench();
  const palette = usePalette();
  const stationMm = useBalance(({ cgMm }) => Math.round(cgMm?.[0] ?? 200));
  const structure = useCommitted((aircraft) => aircraft.structure);
  const { use, hullId } = inHand;
  const shift = useMemo(
    () =>
      meshShift(
        { ...bench.document.api.getState().committed, structure },
        { use, hullId, stationMm },
        read.minMm,
        read.maxMm,
      ),
    [bench, structure, use, hullId, stationMm, read],
  );
  const geometry = useDisposed(() => {
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(read.figuresMm, 3));
    made.computeVertexNormals();
    return made;
  }, [read]);
  const material = useDisposed(
    () =>
      new MeshStandardMaterial({
        color: LOOKED_AT,
        transparent: true,
        opacity: 0.6,
        depthWrite: false,
        side: DoubleSide,
        roughness: 0.9,
      }),
    [],
  );
  const object = useMemo(() => new Mesh(geometry, material), [geometry, material]);
  const lines = useMemo(() => marks(read), [read]);
  return (
    <group position={[...shift]}>
      <primitive object={object} renderOrder={OVER_PARTS - 1} dispose={null} />
      {lines.length > 0 && (
        <FatLines
          key={lines.length}
          pairs={lines}
          color={palette.bad}
          widthPx={4}
          depthTest={false}
          renderOrder={OVER_PARTS}
          moving
        />
      )}
    </group>
  );
}

/** Rims as pairs of points; places where the skin cuts itself as small crosses. */
function marks({ verdict }: ReadMesh): Float32Array {
  const pairs: number[] = [];
  const rims = verdict.ok ? [] : verdict.atMm;
  for (const rim of rims)
    for (let i = 1; i < rim.length; i += 1) pairs.push(...(rim[i - 1] ?? []), ...(rim[i] ?? []));
  for (const at of verdict.ok ? verdict.findings.cutsAtMm : []) {
    for (const axis of [0, 1, 2] as const) {
      const off = (by: number): Vec3 => at.map((mm, k) => (k === axis ? mm + by : mm)) as unknown as Vec3;
      pairs.push(...off(-CROSS_MM), ...off(CROSS_MM));
    }
  }
  return new Float32Array(pairs);
}
