import { fitWithout } from './fitEdits';
import { partsWithoutFeeder } from './powerEdits';
import { statedWithout, switchesWithout } from './switchEdits';
import { withoutTwin } from './twins';
import type { Aircraft } from './types';

/**
 * Takes anything out of a document by its id, variants not looked at: part, tank or structure. A tank that fed it then
 * feeds the outlet; a switch forgets it, and goes with the last thing that it was about; a target band stated in % MAC
 * goes with the surface it was stated for; leads and rules of distance go with what they were for; what
 * it fed is fed by it no longer; the other one of a mirrored pair stays, a pair no more.
 */
export function withoutItem(aircraft: Aircraft, id: string): Aircraft {
  const { parts, tanks } = withoutTwin(aircraft, id);
  const structure = aircraft.structure.some((piece) => piece.id === id)
    ? aircraft.structure.filter((piece) => piece.id !== id)
    : aircraft.structure;
  const switches = aircraft.switches && switchesWithout(aircraft.switches, id);
  return {
    ...aircraft,
    targetBand:
      aircraft.targetBand?.by === 'mac' && aircraft.targetBand.surfaceId === id
        ? null
        : statedWithout({ ...aircraft, structure }, switches ?? []),
    parts: partsWithoutFeeder(
      parts.some((part) => part.id === id) ? parts.filter((part) => part.id !== id) : parts,
      id,
    ),
    tanks: tanks.some((tank) => tank.id === id)
      ? tanks
          .filter((tank) => tank.id !== id)
          .map((tank) => (tank.feeds === id ? { ...tank, feeds: 'outlet' } : tank))
      : tanks,
    structure,
    ...(switches && { switches }),
    ...fitWithout(aircraft, id),
  };
}
