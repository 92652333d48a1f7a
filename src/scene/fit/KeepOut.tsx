import { useMemo, useSyncExternalStore } from 'react';
import { type BufferAttribute, Quaternion, SphereGeometry } from 'three';
import type { Vec3 } from '../../engine/geometry/types';
import { orientedBox } from '../../model/airframe/extent';
import { itemById } from '../../model/document/edit';
import { type KeepOutZone, keepApartFaultsOf, keepOutZones } from '../../model/fit/keepApart';
import { useBench, useCommitted, useLive, useView } from '../../store/react';
import { writePoseTurn } from '../frame/frame';
import { useDisposed } from '../materials/useDisposed';
import { createZoneMaterial, KEEP_OUT } from './zoneMaterial';

const NO_ZONES: readonly KeepOutZone[] = [];

/** While something is dragged: the zones about other things that a rule keeps it out of. */
export function KeepOut() {
  const { drag } = useBench();
  const itemId = useSyncExternalStore(drag.api.subscribe, () => drag.api.getState().itemId);
  const aircraft = useCommitted((committed) => committed);
  const hidden = useView((view) => view.hiddenIds);
  const zones = useMemo(() => (itemId ? keepOutZones(aircraft, itemId) : NO_ZONES), [aircraft, itemId]);
  return zones
    .filter((zone) => !hidden.includes(zone.itemId))
    .map((zone) => <Zone key={`${zone.itemId} ${zone.atLeastMm}`} zone={zone} draggedId={itemId ?? ''} />);
}

const BROKEN = '#ff6a5a';

function Zone({ zone, draggedId }: { readonly zone: KeepOutZone; readonly draggedId: string }) {
  const item = useCommitted((aircraft) => itemById(aircraft, zone.itemId));
  const box = useMemo(() => (item ? orientedBox(item) : null), [item]);
  const turn = useMemo(() => (item ? writePoseTurn(item, new Quaternion()) : new Quaternion()), [item]);
  const geometry = useDisposed(
    () => roundedBox(box?.halfMm ?? [0, 0, 0], zone.atLeastMm),
    [box, zone.atLeastMm],
  );
  const material = useDisposed(createZoneMaterial, []);
  useLive(({ document }) => {
    const broken = keepApartFaultsOf(document.current(), draggedId).some(
      ({ itemId }) => itemId === zone.itemId,
    );
    material.uniforms.uColor?.value.set(broken ? BROKEN : KEEP_OUT);
    material.uniforms.uStrength!.value = broken ? 1 : 0.55;
  });
  if (!box) return null;
  return (
    <mesh
      geometry={geometry}
      material={material}
      position={[...box.centreMm]}
      quaternion={turn}
      renderOrder={23}
    />
  );
}

/** All points no further than `reachMm` from a box: a sphere pulled apart in its eight octants. */
function roundedBox(halfMm: Vec3, reachMm: number): SphereGeometry {
  const geometry = new SphereGeometry(reachMm, 32, 24);
  const places = geometry.getAttribute('position') as BufferAttribute;
  const pulled = (value: number, half: number) => value + (value < 0 ? -half : half);
  for (let i = 0; i < places.count; i += 1) {
    places.setXYZ(
      i,
      pulled(places.getX(i), halfMm[0]),
      pulled(places.getY(i), halfMm[1]),
      pulled(places.getZ(i), halfMm[2]),
    );
  }
  return geometry;
}
