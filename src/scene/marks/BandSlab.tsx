import { useMemo, useRef } from 'react';
import { BoxGeometry, DoubleSide, EdgesGeometry, type Group } from 'three';
import { useLive, useView } from '../../store/react';
import { useExtent } from '../frame/useGround';
import { FatLines } from '../materials/FatLines';
import { usePalette } from '../materials/palette';
import { useDisposed } from '../materials/useDisposed';

/** How far the slab stands beyond the hull and above the model, mm. */
const HALF_WIDTH_MM = 150;

/** The target band rising from the mat as a faint slab through the model. */
export function BandSlab() {
  const { band, dark } = usePalette();
  const free = useView((state) => state.view === 'free');
  const { minMm, maxMm } = useExtent();
  const slab = useRef<Group>(null);
  const box = useDisposed(() => new BoxGeometry(1, 1, 1), []);
  const pairs = useMemo(() => {
    const edges = new EdgesGeometry(box);
    const { array } = edges.getAttribute('position');
    edges.dispose();
    return new Float32Array(array);
  }, [box]);
  const topMm = Math.min(maxMm[2] + 40, minMm[2] + 620);

  useLive(({ balance, view }) => {
    const { band: limits } = balance.get();
    if (!slab.current) return;
    slab.current.visible = limits !== null && view.getState().view === 'free';
    if (!limits) return;
    const width = Math.max(limits.aftMm - limits.forwardMm, 0.5);
    slab.current.position.set((limits.forwardMm + limits.aftMm) / 2, 0, (minMm[2] + topMm) / 2);
    slab.current.scale.set(width, 2 * HALF_WIDTH_MM, topMm - minMm[2]);
  });

  return (
    <group ref={slab} visible={free}>
      <mesh geometry={box} renderOrder={16}>
        <meshBasicMaterial
          color={band}
          transparent
          opacity={dark ? 0.09 : 0.13}
          depthWrite={false}
          side={DoubleSide}
          forceSinglePass
        />
      </mesh>
      <FatLines pairs={pairs} color={band} widthPx={1} opacity={0.75} renderOrder={17} />
    </group>
  );
}
