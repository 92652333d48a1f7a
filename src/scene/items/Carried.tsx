import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Group } from 'three';
import type { Item } from '../../model/document/edit';
import { clashesIn, clearances } from '../../model/fit/clearances';
import type { Bench } from '../../store/bench';
import { useBalance, useBench, useLive, useView } from '../../store/react';
import { writePoseTurn } from '../frame/frame';
import { usePalette } from '../materials/palette';
import { useDisposed } from '../materials/useDisposed';
import { createPartBatch, type LookBook } from './partBatch';
import { createPartFacts } from './partFacts';
import { createPartMaterial, MOST_CLASHES } from './partMaterial';
import { TankVessel } from './TankVessel';
import { useLift } from './useLift';

/** In the elevations parts lie over the skin, so that they read; in the free view the near skin gleams over them. */
const ORDER = { free: 10, elevation: 21 } as const;

/** The drawings of what parts are come after the first paint: plain shapes stand in until then. */
function useLookBook(): LookBook {
  const [book, setBook] = useState<LookBook>(null);
  useEffect(() => {
    let here = true;
    void import('./looks/lookOf').then((module) => here && setBook(module));
    return () => {
      here = false;
    };
  }, []);
  return book;
}

/** The parts that run into something: that which is in hand or selected, and what it hits. */
function clashingIds({ document, view, drag, fit }: Bench): readonly string[] {
  const watched = drag.api.getState().itemId ?? view.getState().selectedId;
  if (!watched || fit.get().playing) return [];
  const clashes = clashesIn(clearances(document.current(), watched));
  return clashes.length > 0 ? [watched, ...clashes.map(({ id }) => id)] : [];
}

/**
 * Everything carried: parts and tanks. They are placed by hand from the live document, so a drag writes
 * to a buffer and renders nothing of React's.
 */
export function Carried() {
  const bench = useBench();
  const palette = usePalette();
  const book = useLookBook();
  const factsOf = useMemo(createPartFacts, []);
  const hidden = useView(({ hiddenIds }) => hiddenIds);
  const facts = useBalance(({ loaded }) => factsOf(loaded, hidden));
  const tankIds = useBalance(({ loaded }) => loaded.tanks.map(({ id }) => id).join(' '));
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
    const clashing = clashingIds(bench).map(number);
    material.marks.uClash.value = Array.from({ length: MOST_CLASHES }, (_, i) => clashing[i] ?? -1);
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
        .split(' ')
        .filter((id) => id !== '' && !hidden.includes(id))
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
