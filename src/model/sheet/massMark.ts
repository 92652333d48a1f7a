import { BARE_AIRFRAME_ID } from '../airframe/bareAirframe';
import { itemById, structureById } from '../document/edit';
import type { Aircraft } from '../document/types';

/** Where a mass in the list comes from. */
export type MassMark = 'weighed' | 'typical' | 'listed' | 'reckoned';

/** One letter for each, told apart without colour. */
export const markLetters: Readonly<Record<MassMark, string>> = {
  weighed: 'W',
  typical: 'T',
  listed: 'L',
  reckoned: 'R',
};

export const MARK_KEY =
  'From: W weighed on its own; T typical, weigh yours; L as listed, nobody says how it was found; R reckoned from its size and material, or from its length.';

/** The source of a part’s, a tank’s or a piece of structure’s mass; of a lead it is always reckoned. */
export function massMark(aircraft: Aircraft, id: string): MassMark {
  if (id === BARE_AIRFRAME_ID) return 'weighed';
  const item = itemById(aircraft, id);
  if (item) {
    if (item.weighedOn !== undefined) return 'weighed';
    return 'typical' in item && item.typical === true ? 'typical' : 'listed';
  }
  const piece = structureById(aircraft, id);
  if (piece) return piece.kind !== 'leg' && piece.mass.by !== 'weighed' ? 'reckoned' : 'listed';
  return (aircraft.leads ?? []).some((lead) => lead.id === id) ? 'reckoned' : 'listed';
}
