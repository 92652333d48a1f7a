import { useMemo } from 'react';
import { BoxGeometry } from 'three';
import type { Vec3 } from '../../engine/geometry/types';
import { ballastFreeZones } from '../../model/place/ballastFree';
import { sizedSpots, usualSpots } from '../../model/place/ballastPlaces';
import { useCommitted, usePlace } from '../../store/react';
import { FatLines } from '../materials/FatLines';
import { usePalette } from '../materials/palette';
import { useDisposed } from '../materials/useDisposed';
import { bayPairs, boxPairs } from './fitLines';
import { createZoneMaterial, KEEP_OUT } from './zoneMaterial';

const DASH_MM = 4;
const LEVEL = { yawDeg: 0, pitchDeg: 0, rollDeg: 0 } as const;

/** While they are being edited: the rooms at ballast spots in dashes, and hatched what is kept free of ballast. */
export function BallastRooms() {
  const shown = usePlace(({ ballastShown }) => ballastShown);
  return shown ? <Rooms /> : null;
}

function Rooms() {
  const palette = usePalette();
  const aircraft = useCommitted((committed) => committed);
  const zones = useMemo(() => ballastFreeZones(aircraft), [aircraft]);
  const pairs = useMemo(() => {
    const spots = sizedSpots(aircraft, aircraft.ballastSpots ?? usualSpots(aircraft));
    return new Float32Array(
      spots.flatMap(({ id, name, positionMm, body }) =>
        body ? bayPairs({ id, name, positionMm, ...body, ...LEVEL }, DASH_MM) : [],
      ),
    );
  }, [aircraft]);
  const edges = useMemo(
    () => new Float32Array(zones.flatMap(({ minMm, maxMm }) => boxPairs(squareBox(minMm, maxMm)))),
    [zones],
  );
  const box = useDisposed(() => new BoxGeometry(1, 1, 1), []);
  // Seen through the hull that it lies in.
  const material = useDisposed(() => Object.assign(createZoneMaterial(), { depthTest: false }), []);
  return (
    <>
      {pairs.length > 0 && (
        <FatLines
          key={`spots ${pairs.length}`}
          pairs={pairs}
          color={palette.matRule}
          widthPx={1.5}
          opacity={0.95}
          depthTest={false}
          renderOrder={27}
        />
      )}
      {edges.length > 0 && (
        <FatLines
          key={`zones ${edges.length}`}
          pairs={edges}
          color={KEEP_OUT}
          widthPx={1.6}
          opacity={1}
          depthTest={false}
          renderOrder={27}
        />
      )}
      {zones.map(({ id, minMm, maxMm }) => (
        <mesh
          key={id}
          geometry={box}
          material={material}
          position={[0, 1, 2].map((axis) => (minMm[axis]! + maxMm[axis]!) / 2) as [number, number, number]}
          scale={[0, 1, 2].map((axis) => maxMm[axis]! - minMm[axis]!) as [number, number, number]}
          renderOrder={26}
        />
      ))}
    </>
  );
}

const squareBox = (minMm: Vec3, maxMm: Vec3) => ({
  centreMm: [0, 1, 2].map((axis) => (minMm[axis]! + maxMm[axis]!) / 2) as unknown as Vec3,
  halfMm: [0, 1, 2].map((axis) => (maxMm[axis]! - minMm[axis]!) / 2) as unknown as Vec3,
  rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1] as const,
});
