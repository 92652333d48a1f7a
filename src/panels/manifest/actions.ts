import type { Vec3 } from '../../engine/geometry/types';
import { itemExtent } from '../../model/airframe/extent';
import { freeName, twinName } from '../../model/document/copyNames';
import {
  duplicatePart,
  itemById,
  mirrorPart,
  mirrorTank,
  movedStructure,
  structureById,
  updatePart,
  updateTank,
} from '../../model/document/edit';
import { freeId } from '../../model/document/ids';
import type { Aircraft, StructurePiece } from '../../model/document/types';

/** An aircraft with something new in it, and what to select. */
export interface Added {
  readonly aircraft: Aircraft;
  readonly id: string;
}

/** Locks or unlocks a part or tank, so that a drag leaves it where it is. */
export function toggleLock(aircraft: Aircraft, id: string): Aircraft {
  const item = itemById(aircraft, id);
  if (!item) return aircraft;
  const update = aircraft.tanks.some((tank) => tank.id === id) ? updateTank : updatePart;
  return update(aircraft, id, { locked: !item.locked });
}

/** A second one just aft of the first, touching it. Null for what is not in the aircraft. */
export function duplicate(aircraft: Aircraft, id: string): Added | null {
  const piece = structureById(aircraft, id);
  if (piece) {
    const name = freeName(aircraft, piece.name);
    const copy: StructurePiece = { ...movedStructure(piece, [20, 0, 0]), name, id: freeId(aircraft, name) };
    return { aircraft: { ...aircraft, structure: [...aircraft.structure, copy] }, id: copy.id };
  }
  const item = itemById(aircraft, id);
  if (!item) return null;
  const { minMm, maxMm } = itemExtent(item);
  const by: Vec3 = [maxMm[0] - minMm[0], 0, 0];
  const tank = aircraft.tanks.find((each) => each.id === id);
  const name = freeName(aircraft, item.name);
  if (!tank) return renamed(duplicatePart(aircraft, id, by), name);
  const [x, y, z] = tank.positionMm;
  const copyId = freeId(aircraft, name);
  const { twinId: _, ...alone } = tank;
  const copy = { ...alone, name, id: copyId, positionMm: [x + by[0], y, z] as const, locked: false };
  return { aircraft: { ...aircraft, tanks: [...aircraft.tanks, copy] }, id: copyId };
}

const renamed = (added: Added | null, name: string): Added | null =>
  added && { ...added, aircraft: updatePart(added.aircraft, added.id, { name }) };

/** The same on the other side, a mirrored pair with it. Null for what lies on the plane of symmetry or is structure. */
export function mirrored(aircraft: Aircraft, id: string): Added | null {
  const item = itemById(aircraft, id);
  if (!item) return null;
  const name = twinName(aircraft, item.name, item.positionMm[1] < 0);
  const isTank = aircraft.tanks.some((each) => each.id === id);
  const added = isTank ? mirrorTank(aircraft, id) : mirrorPart(aircraft, id);
  if (!added || !isTank) return renamed(added, name);
  return { ...added, aircraft: updateTank(added.aircraft, added.id, { name }) };
}

/** What anything aboard is called; the id where nothing has it. */
export const nameOf = (aircraft: Aircraft, id: string): string =>
  (itemById(aircraft, id) ?? structureById(aircraft, id) ?? aircraft.leads?.find((lead) => lead.id === id))
    ?.name ?? id;
