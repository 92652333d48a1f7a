import type { Part } from '../document/types';
import type { ShelfPart } from './shelf';

/** A part as a thing by itself, without what belongs to the aircraft that it is in: place, bay, pair, lock, what feeds it. */
export function offAircraft(part: Part | ShelfPart): ShelfPart {
  const {
    id: _id,
    positionMm: _at,
    bayId: _bay,
    twinId: _twin,
    locked: _locked,
    power,
    ...thing
  } = { ...(part as Part) };
  if (!power) return thing;
  const { fedBy: _feeders, ...use } = power;
  return Object.keys(use).length > 0 ? { ...thing, power: use } : thing;
}
