import type { Vec3 } from '../../engine/geometry/types';
import { freeId } from './ids';
import { mirroredPart, mirroredTank, partFollowing, tankFollowing, withoutTwin } from './twins';
import type { Aircraft, Part, StructurePiece, TankItem } from './types';
import { withoutForAll } from './variants';

/** Edits are pure: an aircraft in, a new one out that shares everything the edit did not touch. */

export type Item = Part | TankItem;

const shifted = (p: Vec3, by: Vec3): Vec3 => [p[0] + by[0], p[1] + by[1], p[2] + by[2]];

/** A part or tank by its id. */
export function itemById(aircraft: Aircraft, id: string): Item | undefined {
  return aircraft.parts.find((part) => part.id === id) ?? aircraft.tanks.find((tank) => tank.id === id);
}

export function structureById(aircraft: Aircraft, id: string): StructurePiece | undefined {
  return aircraft.structure.find((piece) => piece.id === id);
}

const mapById = <T extends { readonly id: string }>(
  list: readonly T[],
  id: string,
  edit: (item: T) => T,
): readonly T[] =>
  list.some((item) => item.id === id) ? list.map((item) => (item.id === id ? edit(item) : item)) : list;

/** A list after a change of one of its items; the other one of a mirrored pair follows. */
function changedWithTwin<T extends Item>(
  list: readonly T[],
  id: string,
  change: Partial<T>,
  follow: (twin: T, before: T, after: T) => T,
): readonly T[] {
  const before = list.find((item) => item.id === id);
  if (!before) return list;
  const after = { ...before, ...change };
  const { twinId } = after;
  return list.map((item) => {
    if (item === before) return after;
    return item.id === twinId && item.twinId === id ? follow(item, before, after) : item;
  });
}

/** Changes the fields of one part; the other one of a mirrored pair follows. */
export function updatePart(aircraft: Aircraft, id: string, change: Partial<Part>): Aircraft {
  return { ...aircraft, parts: changedWithTwin(aircraft.parts, id, change, partFollowing) };
}

/** Puts a part as it is after in the place of what it was, fields that are gone with it; the other one of a mirrored pair follows. */
export const replacePart = (aircraft: Aircraft, before: Part, after: Part): Aircraft => ({
  ...aircraft,
  parts: aircraft.parts.map((part) => {
    if (part.id === before.id) return after;
    return part.id === before.twinId ? partFollowing(part, before, after) : part;
  }),
});

/** Changes the fields of one tank; the other one of a mirrored pair follows. */
export function updateTank(aircraft: Aircraft, id: string, change: Partial<TankItem>): Aircraft {
  return { ...aircraft, tanks: changedWithTwin(aircraft.tanks, id, change, tankFollowing) };
}

/** Replaces one piece of structure by another with the same id. */
export function replaceStructure(aircraft: Aircraft, piece: StructurePiece): Aircraft {
  return { ...aircraft, structure: mapById(aircraft.structure, piece.id, () => piece) };
}

/** Sets a part or tank down with its origin at a point, mm from the datum. */
export function placeItem(aircraft: Aircraft, id: string, positionMm: Vec3): Aircraft {
  return aircraft.parts.some((part) => part.id === id)
    ? updatePart(aircraft, id, { positionMm })
    : updateTank(aircraft, id, { positionMm });
}

/** Moves a piece of structure bodily; of a mirrored pair the right-hand one moves so, its twin likewise mirrored. */
export function movedStructure(piece: StructurePiece, by: Vec3): StructurePiece {
  switch (piece.kind) {
    case 'fuselage':
      return {
        ...piece,
        buttlineMm: piece.buttlineMm + by[1],
        ...(piece.mesh && {
          mesh: {
            ...piece.mesh,
            stationMm: piece.mesh.stationMm + by[0],
            waterlineMm: piece.mesh.waterlineMm + by[2],
          },
        }),
        sections: piece.sections.map((section) => ({
          ...section,
          stationMm: section.stationMm + by[0],
          waterlineMm: section.waterlineMm + by[2],
        })),
      };
    case 'surface':
      return { ...piece, rootMm: shifted(piece.rootMm, by) };
    case 'boom':
      return { ...piece, frontMm: shifted(piece.frontMm, by), rearMm: shifted(piece.rearMm, by) };
    case 'leg':
      return { ...piece, topMm: shifted(piece.topMm, by), axleMm: shifted(piece.axleMm, by) };
    case 'block':
      return { ...piece, positionMm: shifted(piece.positionMm, by) };
  }
}

/** Takes anything out by its id, for every variant, with all that went with it (`withoutItem`). */
export const removeItem = (aircraft: Aircraft, id: string): Aircraft => withoutForAll(aircraft, id);

/** Breaks a mirrored pair: both stay as they stand, and each goes its own way from now on. */
export function breakPair(aircraft: Aircraft, id: string): Aircraft {
  const twinId = itemById(aircraft, id)?.twinId;
  if (twinId === undefined) return aircraft;
  const freed = { ...aircraft, ...withoutTwin(aircraft, id) };
  return { ...freed, ...withoutTwin(freed, twinId) };
}

/** Adds a part and returns it as it stands in the new aircraft, with an id of its own. */
export function addPart(aircraft: Aircraft, part: Omit<Part, 'id'>): { aircraft: Aircraft; id: string } {
  const id = freeId(aircraft, part.name);
  return { aircraft: { ...aircraft, parts: [...aircraft.parts, { ...part, id } as Part] }, id };
}

/** A second one just like it, `byMm` away, in no pair. */
export function duplicatePart(
  aircraft: Aircraft,
  id: string,
  byMm: Vec3,
): { aircraft: Aircraft; id: string } | null {
  const part = aircraft.parts.find((item) => item.id === id);
  if (!part) return null;
  const { twinId: _, ...alone } = part;
  return addPart(aircraft, { ...alone, positionMm: shifted(part.positionMm, byMm), locked: false });
}

/**
 * The same part on the other side of the plane of symmetry, a mirrored pair with the first from then on. Null for a part on the
 * plane itself, or in a pair already.
 */
export function mirrorPart(aircraft: Aircraft, id: string): { aircraft: Aircraft; id: string } | null {
  const part = aircraft.parts.find((item) => item.id === id);
  if (!part || part.positionMm[1] === 0 || part.twinId !== undefined) return null;
  const made = addPart(aircraft, { ...mirroredPart(part), twinId: id });
  const parts = mapById(made.aircraft.parts, id, (item) => ({ ...item, twinId: made.id }));
  return { aircraft: { ...made.aircraft, parts }, id: made.id };
}

/** The same tank on the other side, likewise; both drain to the same place, at the same rank. */
export function mirrorTank(aircraft: Aircraft, id: string): { aircraft: Aircraft; id: string } | null {
  const tank = aircraft.tanks.find((item) => item.id === id);
  if (!tank || tank.positionMm[1] === 0 || tank.twinId !== undefined) return null;
  const twin = { ...mirroredTank(tank), id: freeId(aircraft, tank.name), twinId: id };
  const tanks = mapById([...aircraft.tanks, twin], id, (item) => ({ ...item, twinId: twin.id }));
  return { aircraft: { ...aircraft, tanks }, id: twin.id };
}
