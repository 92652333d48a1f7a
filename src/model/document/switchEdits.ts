import { freeId, UNDERCARRIAGE_ID } from './ids';
import type { Aircraft, SwitchItem } from './types';

type Position = SwitchItem['positions'][number];

/** What a person switches: things that come off, in flight or on the balancing stand only, or tanks that are emptied. */
export type SwitchKind = 'aboard' | 'on-stand' | 'filled';

/** A switch of two positions about some things: aboard and not aboard, or full and empty. */
export function addSwitch(
  aircraft: Aircraft,
  name: string,
  kind: SwitchKind,
  ids: readonly string[],
): Aircraft {
  const { switches = [] } = aircraft;
  const positions: readonly Position[] =
    kind === 'filled'
      ? [
          { id: 'full', name: 'full' },
          { id: 'empty', name: 'empty', empty: ids },
        ]
      : [
          { id: 'on', name: 'on' },
          { id: 'off', name: 'off', without: ids, ...(kind === 'on-stand' && { onStand: true }) },
        ];
  return {
    ...aircraft,
    switches: [...switches, { id: freeId(aircraft, name, 'switch'), name, positions }],
  };
}

/** Takes a switch away; limits that were stated for one of its positions forget it. */
export function removeSwitch(aircraft: Aircraft, id: string): Aircraft {
  const switches = aircraft.switches?.filter((each) => each.id !== id);
  return { ...aircraft, switches, targetBand: statedWithout(aircraft, switches ?? []) };
}

/** The band with its load state naming only switches that are left; that of the legs stays while any of them retracts. */
export function statedWithout(
  { targetBand, structure, switches: before = [] }: Aircraft,
  left: readonly SwitchItem[],
): Aircraft['targetBand'] {
  const stated = targetBand?.statedFor;
  if (!stated) return targetBand;
  const gone = new Set(before.map(({ id }) => id));
  for (const { id } of left) gone.delete(id);
  if (!structure.some((piece) => piece.kind === 'leg' && piece.retract)) gone.add(UNDERCARRIAGE_ID);
  if (!stated.switches.some(({ switchId }) => gone.has(switchId))) return targetBand;
  const switches = stated.switches.filter(({ switchId }) => !gone.has(switchId));
  return { ...targetBand, statedFor: { ...stated, switches } };
}

/** The switches without a thing that is gone; one that is left with nothing to switch goes too. */
export function switchesWithout(switches: readonly SwitchItem[], id: string): readonly SwitchItem[] {
  if (!switches.some((each) => idsOf(each).includes(id))) return switches;
  return switches
    .map((each) => ({ ...each, positions: each.positions.map((position) => positionWithout(position, id)) }))
    .filter((each) => idsOf(each).length > 0);
}

/** Everything that a switch is about. */
export const idsOf = ({ positions }: SwitchItem): readonly string[] => [
  ...new Set(positions.flatMap(({ without = [], empty = [] }) => [...without, ...empty])),
];

function positionWithout(position: Position, id: string): Position {
  const rest = (ids: readonly string[]) => ids.filter((each) => each !== id);
  const { without, empty, ...named } = position;
  return {
    ...named,
    ...(without && { without: rest(without) }),
    ...(empty && { empty: rest(empty) }),
  };
}
