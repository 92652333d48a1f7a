import { fitWithout } from './fitEdits';
import { switchesWithout } from './switchEdits';
import type { Aircraft, Part, TankItem } from './types';

/**
 * Takes anything out of a document by its id, variants not looked at: part, tank or structure. A tank that fed it then
 * feeds the outlet; a switch forgets it, and goes with the last thing that it was about; a target band stated in % MAC
 * goes with the surface it was stated for; leads and rules of distance go with what they were for; the other one of a
 * mirrored pair stays, a pair no more.
 */
export function withoutItem(aircraft: Aircraft, id: string): Aircraft {
  const { parts, tanks } = withoutTwin(aircraft, id);
  return {
    ...aircraft,
    targetBand:
      aircraft.targetBand?.by === 'mac' && aircraft.targetBand.surfaceId === id ? null : aircraft.targetBand,
    parts: parts.some((part) => part.id === id) ? parts.filter((part) => part.id !== id) : parts,
    tanks: tanks.some((tank) => tank.id === id)
      ? tanks
          .filter((tank) => tank.id !== id)
          .map((tank) => (tank.feeds === id ? { ...tank, feeds: 'outlet' } : tank))
      : tanks,
    structure: aircraft.structure.some((piece) => piece.id === id)
      ? aircraft.structure.filter((piece) => piece.id !== id)
      : aircraft.structure,
    ...(aircraft.switches && { switches: switchesWithout(aircraft.switches, id) }),
    ...fitWithout(aircraft, id),
  };
}

/** The parts and tanks with nothing paired with a thing any more: a broken pair stays where it stands. */
export function withoutTwin({ parts, tanks }: Aircraft, id: string): Pick<Aircraft, 'parts' | 'tanks'> {
  return { parts: unpaired(parts, id), tanks: unpaired(tanks, id) };
}

function unpaired<T extends Part | TankItem>(list: readonly T[], id: string): readonly T[] {
  if (!list.some(({ twinId }) => twinId === id)) return list;
  return list.map((item) => {
    if (item.twinId !== id) return item;
    const { twinId: _, ...alone } = item;
    return alone as unknown as T;
  });
}
