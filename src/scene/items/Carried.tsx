import { useLayoutEffect, useMemo, useRef } from 'react';
import type { Group } from 'three';
import type { Balance } from '../../model/balance/balance';
import type { Item } from '../../model/document/edit';
import { createPiece } from '../../store/piece';
import { useBalance, useBench, useLive, useSteadyList, useView } from '../../store/react';
import { writePoseTurn } from '../frame/frame';
import { useScenePiece } from '../frame/useScenePiece';
import { usePalette } from '../materials/palette';
import { useDisposed } from '../materials/useDisposed';
import { createPartBatch, type LookBook } from './partBatch';
import { createPartFacts } from './partFacts';
import { createPartMaterial } from './partMaterial';
import { TankVessel } from './TankVessel';
import { useLift } from './useLift';

/** In the elevations parts lie over the skin, so that they read; in the free view the near skin gleams over them. */
const ORDER = { free: 10, elevation: 21 } as const;

/** The drawings of what parts are come after the first paint: plain shapes stand in until then. */
const lookBook = createPiece(
  () => import('./looks/lookOf'),
  (module): LookBook => module,
);

/** Hatching of what does not fit in another load state than the one shown, or only should not stand so. */
const FAINT = 0.35;

/**
 * Everything carried: parts and tanks. They are placed by hand from the live document, so a drag writes
 * to a buffer and renders nothing of React's.
 */
export function Carried() {
  const bench = useBench();
  const palette = usePalette();
  const book = useScenePiece(lookBook, 'How the parts look');
  const factsOf = useMemo(createPartFacts, []);
  const hidden = useView(({ hiddenIds }) => hiddenIds);
  const facts = useBalance(({ loaded }) => factsOf(loaded, hidden));
  const tankIds = useBalance(useSteadyList(({ loaded }: Balance) => loaded.tanks.map(({ id }) => id)));
  const material = useDisposed(createPartMaterial, []);
  const batch = useDisposed(
    () => createPartBatch(facts, palette, book, material),
    [facts, palette, book, material],
  );
  const lift = useLift();
  const tanks = useRef(new Map<string, Group>());

  const place = () => {
    const aircraft = bench.document.current();
    const liftMm = lift();
    for (const part of aircraft.parts) {
      const index = batch.indexOf.get(part.id);
      if (index !== undefined) batch.place(index, part, liftMm);
    }
    for (const tank of aircraft.tanks) {
      const group = tanks.current.get(tank.id);
      if (group) placeTank(group, tank, liftMm);
    }
  };
  const mark = () => {
    const { selectedId, hoveredId, view } = bench.view.getState();
    const number = (id: string | null) => (id === null ? -1 : (batch.indexOf.get(id) ?? -1));
    material.marks.uLit.value = [number(selectedId), number(hoveredId)];
    batch.hatch((id) => {
      const worst = bench.fit.mark(id);
      return worst === null ? 0 : worst.now && worst.severity === 'bad' ? 1 : FAINT;
    });
    const order = view === 'free' ? ORDER.free : ORDER.elevation;
    for (const [i, drawn] of batch.group.children.entries()) drawn.renderOrder = order + 0.1 * i;
  };
  useLive(() => {
    place();
    mark();
  });
  useLayoutEffect(() => {
    place();
    mark();
  });

  const keep = (id: string) => (group: Group | null) => {
    if (group) tanks.current.set(id, group);
    else tanks.current.delete(id);
  };
  return (
    <>
      <primitive object={batch.group} dispose={null} />
      {tankIds
        .filter((id) => !hidden.includes(id))
        .map((id) => (
          <group key={id} ref={keep(id)}>
            <TankVessel id={id} />
          </group>
        ))}
    </>
  );
}

function placeTank(group: Group, tank: Item, liftMm: number): void {
  const [x, y, z] = tank.positionMm;
  group.position.set(x, y, z + liftMm);
  writePoseTurn(tank, group.quaternion);
}
