import { fitWithout } from './fitEdits';
import { switchesWithout } from './switchEdits';
import type { Aircraft } from './types';

/**
 * Takes anything out of a document by its id, variants not looked at: part, tank or structure. A tank that fed it then
 * feeds the outlet; a switch forgets it, and goes with the last thing that it was about; a target band stated in % MAC
 * goes with the surface it was stated for; leads and rules of distance go with what they were for.
 */
export function withoutItem(aircraft: Aircraft, id: string): Aircraft {
  return {
    ...aircraft,
    targetBand:
      aircraft.targetBand?.by === 'mac' && aircraft.targetBand.surfaceId === id ? null : aircraft.targetBand,
    parts: aircraft.parts.some((part) => part.id === id)
      ? aircraft.parts.filter((part) => part.id !== id)
      : aircraft.parts,
    tanks: aircraft.tanks.some((tank) => tank.id === id)
      ? aircraft.tanks
          .filter((tank) => tank.id !== id)
          .map((tank) => (tank.feeds === id ? { ...tank, feeds: 'outlet' } : tank))
      : aircraft.tanks,
    structure: aircraft.structure.some((piece) => piece.id === id)
      ? aircraft.structure.filter((piece) => piece.id !== id)
      : aircraft.structure,
    ...(aircraft.switches && { switches: switchesWithout(aircraft.switches, id) }),
    ...fitWithout(aircraft, id),
  };
}
