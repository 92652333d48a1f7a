import { useLayoutEffect, useRef } from 'react';
import type { Group } from 'three';
import { notesOn } from '../../engine/memory/memory';
import type { Item } from '../../model/document/edit';
import { useBalance, useBench, useLive, useView } from '../../store/react';
import { writePoseTurn } from '../frame/frame';
import { PartSolid } from './PartSolid';
import { TankVessel } from './TankVessel';

const idsOf = (list: string, hidden: readonly string[]) =>
  list.split(' ').filter((id) => id !== '' && !hidden.includes(id));

/**
 * Everything carried: parts and tanks. They are placed by hand from the live document, so a drag moves
 * a group and renders nothing of React's.
 */
export function Carried() {
  const bench = useBench();
  const partIds = useBalance(({ loaded }) => loaded.parts.map(({ id }) => id).join(' '));
  const tankIds = useBalance(({ loaded }) => loaded.tanks.map(({ id }) => id).join(' '));
  const hidden = useView(({ hiddenIds }) => hiddenIds);
  const groups = useRef(new Map<string, Group>());
  const placed = useRef(notesOn<Group, Item>());

  const place = () => {
    const { parts, tanks } = bench.document.current();
    for (const item of [...parts, ...tanks]) {
      const group = groups.current.get(item.id);
      if (!group || placed.current.get(group) === item) continue;
      group.position.set(...item.positionMm);
      writePoseTurn(item, group.quaternion);
      placed.current.set(group, item);
    }
  };
  useLive(place);
  useLayoutEffect(place);

  const keep = (id: string) => (group: Group | null) => {
    if (group) groups.current.set(id, group);
    else groups.current.delete(id);
  };
  return (
    <>
      {idsOf(partIds, hidden).map((id) => (
        <group key={id} ref={keep(id)}>
          <PartSolid id={id} />
        </group>
      ))}
      {idsOf(tankIds, hidden).map((id) => (
        <group key={id} ref={keep(id)}>
          <TankVessel id={id} />
        </group>
      ))}
    </>
  );
}
