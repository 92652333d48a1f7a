import { useMemo } from 'react';
import { Quaternion } from 'three';
import type { Vec3 } from '../../engine/geometry/types';
import type { GhostItem } from '../../store/placeStore';
import { useCommitted, usePlace } from '../../store/react';
import { writePoseTurn } from '../frame/frame';
import { FatLines } from '../materials/FatLines';
import { shapeLinePairs } from '../materials/shapeGeometry';

/** Reads on the mat in either theme, and is no role's colour. */
const GHOST = '#ffffff';
/** In front of everything but the marks of the CG. */
const OVER_PARTS = 36;

/** Faint outlines of where another state has things, each with a thread from where it stands now, and its CG. */
export function Ghost() {
  const parts = usePlace(({ ghost }) => ghost?.parts ?? null);
  const cgMm = usePlace(({ ghost }) => ghost?.cgMm ?? null);
  return (
    <>
      {parts?.map((part) => (
        <GhostPart key={part.id} part={part} />
      ))}
      {cgMm && <GhostCg atMm={cgMm} />}
    </>
  );
}

/** How far the lines of the ghost's CG reach, mm. */
const CG_REACH_MM = 34;

/** Where its CG would be: three lines that cross there. */
function GhostCg({ atMm }: { readonly atMm: Vec3 }) {
  const pairs = useMemo(() => {
    const end = (axis: number, by: number) => atMm.map((mm, at) => (at === axis ? mm + by : mm));
    return new Float32Array(
      [0, 1, 2].flatMap((axis) => [...end(axis, -CG_REACH_MM), ...end(axis, CG_REACH_MM)]),
    );
  }, [atMm]);
  return (
    <FatLines
      pairs={pairs}
      color={GHOST}
      widthPx={2.2}
      opacity={0.95}
      depthTest={false}
      renderOrder={OVER_PARTS}
    />
  );
}

function GhostPart({ part }: { readonly part: GhostItem }) {
  const from = useCommitted(
    ({ parts, tanks }) => [...parts, ...tanks].find(({ id }) => id === part.id)?.positionMm ?? null,
  );
  const pairs = useMemo(() => shapeLinePairs(part.shape), [part.shape]);
  const turn = useMemo(() => writePoseTurn(part, new Quaternion()), [part]);
  const thread = useMemo(() => (from ? between(from, part.positionMm) : null), [from, part.positionMm]);
  return (
    <>
      <group position={[...part.positionMm]} quaternion={turn}>
        <FatLines
          pairs={pairs}
          color={GHOST}
          widthPx={1.8}
          opacity={0.95}
          depthTest={false}
          renderOrder={OVER_PARTS}
        />
      </group>
      {thread && (
        <FatLines
          pairs={thread}
          color={GHOST}
          widthPx={1.4}
          opacity={0.8}
          depthTest={false}
          renderOrder={OVER_PARTS}
          dashMm={9}
        />
      )}
    </>
  );
}

const between = (from: Vec3, to: Vec3) => new Float32Array([...from, ...to]);
