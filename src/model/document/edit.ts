import type { Vec3 } from '../../engine/geometry/types';
import { mirroredShape } from '../../engine/mass/mirroredShape';
import { fitWithout } from './fitEdits';
import { freeId } from './ids';
import { partsWithoutFeeder } from './powerEdits';
import { switchesWithout } from './switchEdits';
import type { Aircraft, Part, StructurePiece, TankItem } from './types';

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

/** Changes the fields of one part. */
export function updatePart(aircraft: Aircraft, id: string, change: Partial<Part>): Aircraft {
  return { ...aircraft, parts: mapById(aircraft.parts, id, (part) => ({ ...part, ...change })) };
}

/** Changes the fields of one tank. */
export function updateTank(aircraft: Aircraft, id: string, change: Partial<TankItem>): Aircraft {
  return { ...aircraft, tanks: mapById(aircraft.tanks, id, (tank) => ({ ...tank, ...change })) };
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

/**
 * Takes anything out by its id: part, tank or structure. A tank that fed it then feeds the outlet; a switch
 * forgets it, and goes with the last thing that it was about; a target band stated in % MAC goes with the surface it was stated for;
 * leads and rules of distance go with what they were for; what it fed is fed by it no longer.
 */
export function removeItem(aircraft: Aircraft, id: string): Aircraft {
  return {
    ...aircraft,
    targetBand:
      aircraft.targetBand?.by === 'mac' && aircraft.targetBand.surfaceId === id ? null : aircraft.targetBand,
    parts: aircraft.parts.some((part) => part.id === id)
      ? partsWithoutFeeder(
          aircraft.parts.filter((part) => part.id !== id),
          id,
        )
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

/** Adds a part and returns it as it stands in the new aircraft, with an id of its own. */
export function addPart(aircraft: Aircraft, part: Omit<Part, 'id'>): { aircraft: Aircraft; id: string } {
  const id = freeId(aircraft, part.name);
  return { aircraft: { ...aircraft, parts: [...aircraft.parts, { ...part, id } as Part] }, id };
}

/** A second one just like it, `byMm` away. */
export function duplicatePart(
  aircraft: Aircraft,
  id: string,
  byMm: Vec3,
): { aircraft: Aircraft; id: string } | null {
  const part = aircraft.parts.find((item) => item.id === id);
  return part
    ? addPart(aircraft, { ...part, positionMm: shifted(part.positionMm, byMm), locked: false })
    : null;
}

/** The same part on the other side of the plane of symmetry. Null for a part on the plane itself. */
export function mirrorPart(aircraft: Aircraft, id: string): { aircraft: Aircraft; id: string } | null {
  const part = aircraft.parts.find((item) => item.id === id);
  if (!part || part.positionMm[1] === 0) return null;
  const [x, y, z] = part.positionMm;
  return addPart(aircraft, {
    ...part,
    shape: mirroredShape(part.shape),
    positionMm: [x, -y, z],
    yawDeg: -part.yawDeg,
    rollDeg: -part.rollDeg,
    locked: false,
  });
}
