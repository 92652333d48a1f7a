import type { Vec3 } from '../../engine/geometry/types';
import { lerp, sub } from '../../engine/geometry/vec3';
import { around } from '../../engine/mass/shapeBounds';
import type { MeshShape } from '../../engine/mass/shapes';
import type { Mesh } from '../../engine/mass/types';
import { meshSections } from '../../engine/mesh/meshSections';
import { freeName } from '../document/copyNames';
import { addPart, replaceStructure, structureById } from '../document/edit';
import { freeId } from '../document/ids';
import type { Aircraft, Fuel, Fuselage } from '../document/types';

/** What a closed mesh of one's own can be aboard. */
export type MeshUse = 'fuselage' | 'part' | 'tank';

/** A mesh about the middle of its own box, mm to a thousandth. */
export function centredMesh({ verticesMm, triangles }: Mesh): MeshShape {
  const { minMm, maxMm } = around(verticesMm);
  const middle = lerp(minMm, maxMm, 0.5).map((mm) => thousandth(mm)) as unknown as Vec3;
  return {
    kind: 'mesh',
    verticesMm: verticesMm.map((vertex) => sub(vertex, middle).map(thousandth) as unknown as Vec3),
    triangles,
  };
}

const thousandth = (mm: number): number => Math.round(mm * 1000) / 1000 || 0;

/** A hull's fields for a mesh whose front stands at a station, its box's middle at a waterline, mm. */
export function meshHull(
  shape: MeshShape,
  noseMm: number,
  waterlineMm: number,
): Pick<Fuselage, 'mesh' | 'sections'> {
  const { minMm } = around(shape.verticesMm);
  const stationMm = thousandth(noseMm - minMm[0]);
  const sections = meshSections(shape).map(({ xMm, widthMm, heightMm, centreYMm, centreZMm, roundness }) => ({
    stationMm: thousandth(stationMm + xMm),
    // About the hull's own middle line: as wide as the farther side.
    widthMm: thousandth(widthMm + 2 * Math.abs(centreYMm)),
    heightMm: thousandth(heightMm),
    waterlineMm: thousandth(waterlineMm + centreZMm),
    roundness: thousandth(roundness),
  }));
  return { mesh: { shape, stationMm, waterlineMm }, sections };
}

/** Where a mesh is to stand: a hull by its nose and the middle of its height, a part or tank by its middle; mm. */
export interface MeshPlace {
  readonly use: MeshUse;
  /** The hull that it takes the place of. */
  readonly hullId: string | null;
  /** Where a part or tank is wanted. */
  readonly stationMm: number;
}

/** How far a mesh goes from where its file has it to where it is to stand, mm; its box is given. */
export function meshShift(
  aircraft: Aircraft,
  { use, hullId, stationMm }: MeshPlace,
  minMm: Vec3,
  maxMm: Vec3,
): Vec3 {
  const [x, y, z] = lerp(minMm, maxMm, 0.5);
  if (use !== 'fuselage') return [stationMm - x, -y, -z];
  const hull = hullId === null ? undefined : structureById(aircraft, hullId);
  const at = hull?.kind === 'fuselage' ? placeOf(hull) : { noseMm: 0, buttlineMm: 0, waterlineMm: 0 };
  return [at.noseMm - minMm[0], at.buttlineMm - y, at.waterlineMm - z];
}

/** Where a hull begins and how high it stands, mm. */
function placeOf({ sections, buttlineMm }: Fuselage) {
  const low = Math.min(...sections.map(({ waterlineMm, heightMm }) => waterlineMm - heightMm / 2));
  const high = Math.max(...sections.map(({ waterlineMm, heightMm }) => waterlineMm + heightMm / 2));
  return { noseMm: sections[0]?.stationMm ?? 0, buttlineMm, waterlineMm: thousandth((low + high) / 2) };
}

/** A hull that is there gets a mesh for its surface, nose where its nose was; its mass and all else stay. */
export function withMeshHull(aircraft: Aircraft, hullId: string, mesh: Mesh): Aircraft {
  const hull = structureById(aircraft, hullId);
  if (hull?.kind !== 'fuselage') return aircraft;
  const { noseMm, waterlineMm } = placeOf(hull);
  return replaceStructure(aircraft, { ...hull, ...meshHull(centredMesh(mesh), noseMm, waterlineMm) });
}

/** How many characters of the file a mesh takes, about: as it is written, without the breaks of its lines. */
export const meshTextLength = ({ verticesMm, triangles }: Mesh): number =>
  [...verticesMm, ...triangles].reduce((sum, row) => sum + row.join(',').length + 3, 0);

/** Lighter than most: what is assumed until it is weighed must not flatter. From memory: 1 mm of glass and resin is 1.7 kg/m². */
const ASSUMED_SKIN_G_PER_M2 = 600;
/** A thing that nobody has weighed is taken for as dense as half of water. */
const ASSUMED_G_PER_MM3 = 0.5e-3;

/** Puts a mesh aboard as a thing of its own, its mass assumed. A part or tank stands at a station, to be set down. */
export function addOwnMesh(
  aircraft: Aircraft,
  use: MeshUse,
  mesh: Mesh,
  {
    name,
    volumeMm3,
    stationMm,
    fuel,
  }: {
    readonly name: string;
    readonly volumeMm3: number;
    readonly stationMm: number;
    readonly fuel: Fuel;
  },
): { readonly aircraft: Aircraft; readonly id: string } {
  const shape = centredMesh(mesh);
  const free = freeName(aircraft, name);
  const pose = { positionMm: [stationMm, 0, 0] as Vec3, yawDeg: 0, pitchDeg: 0, rollDeg: 0 };
  switch (use) {
    case 'fuselage': {
      const id = freeId(aircraft, free);
      const hull: Fuselage = {
        id,
        kind: 'fuselage',
        name: free,
        sides: 'centre',
        buttlineMm: 0,
        ...meshHull(shape, 0, 0),
        skinMm: 2,
        mass: { by: 'skin', gPerM2: ASSUMED_SKIN_G_PER_M2 },
      };
      return { aircraft: { ...aircraft, structure: [...aircraft.structure, hull] }, id };
    }
    case 'part': {
      const massG = Math.max(1, Math.round(volumeMm3 * ASSUMED_G_PER_MM3));
      return addPart(aircraft, { ...pose, name: free, role: 'other', shape, massG });
    }
    case 'tank': {
      const id = freeId(aircraft, free);
      const tank = {
        ...pose,
        id,
        name: free,
        shape,
        emptyMassG: 50,
        startMl: null,
        unusableMl: 0,
        feeds: 'outlet',
        rank: 1,
      };
      return {
        aircraft: { ...aircraft, tanks: [...aircraft.tanks, tank], fuel: aircraft.fuel ?? fuel },
        id,
      };
    }
  }
}
