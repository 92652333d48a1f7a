import { freeId, freeIdAmong, takenIds } from '../../model/document/ids';
import type { Aircraft, Hatch, Lead } from '../../model/document/types';
import { proposeBays } from '../../model/fit/bays';

/** Binds a part to a bay, or with null to none. */
export const bindToBay = (aircraft: Aircraft, partId: string, bayId: string | null): Aircraft => ({
  ...aircraft,
  parts: aircraft.parts.map((part) => {
    if (part.id !== partId) return part;
    const { bayId: _, ...free } = part;
    return bayId === null ? free : { ...free, bayId };
  }),
});

/** The bays that the hulls leave between their formers, beside those there are. */
export function withProposedBays(aircraft: Aircraft): Aircraft {
  const taken = takenIds(aircraft);
  const proposed = proposeBays(aircraft).map((bay) => {
    const id = freeIdAmong(taken, bay.id, 'bay');
    taken.add(id);
    return { ...bay, id };
  });
  return { ...aircraft, bays: [...(aircraft.bays ?? []), ...proposed] };
}

/** A bay of a size to start from, its middle at a station, mm. */
export function withBay(aircraft: Aircraft, atMm: number): Aircraft {
  const id = freeId(aircraft, 'Bay', 'bay');
  const size = { lengthMm: 150, widthMm: 80, heightMm: 80 };
  const bay = {
    id,
    name: 'Bay',
    ...size,
    positionMm: [atMm, 0, 0] as const,
    yawDeg: 0,
    pitchDeg: 0,
    rollDeg: 0,
  };
  return { ...aircraft, bays: [...(aircraft.bays ?? []), bay] };
}

/** An opening in the top, its middle at a station and a height, mm. */
export function withHatch(aircraft: Aircraft, atMm: number, topMm: number): Aircraft {
  const id = freeId(aircraft, 'Hatch', 'hatch');
  const hatch: Hatch = {
    id,
    name: 'Hatch',
    centreMm: [atMm, 0, topMm],
    lengthMm: 150,
    widthMm: 80,
    normal: [0, 0, 1],
  };
  return { ...aircraft, hatches: [...(aircraft.hatches ?? []), hatch] };
}

/** A lead between the first two items aboard; a sentence when there are not two. */
export function withLead(aircraft: Aircraft): Aircraft | string {
  const [from, to] = [...aircraft.parts, ...aircraft.tanks];
  if (!from || !to) return 'A lead needs two parts or tanks to join.';
  const id = freeId(aircraft, 'Lead', 'lead');
  const lead: Lead = { id, name: 'Lead', from: from.id, to: to.id, massGPerM: 20, waypointsMm: [] };
  return { ...aircraft, leads: [...(aircraft.leads ?? []), lead] };
}
