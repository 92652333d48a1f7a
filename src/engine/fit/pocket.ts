import { convexHull } from '../geometry/convexHull';
import { type Corner, polygonArea } from '../geometry/polygon';
import { pointToAircraft, poseRotation, turn, turnBack } from '../geometry/rotation';
import type { Vec3 } from '../geometry/types';
import { dot } from '../geometry/vec3';
import { massAdd, massPlace, massRemove, noMass } from '../mass/massProperties';
import { meshProperties } from '../mass/mesh';
import type { Shape } from '../mass/shapes';
import { tessellate } from '../mass/tessellate';
import type { MassProperties } from '../mass/types';
import { perObject } from '../memory/memory';
import { type Convex, convexOfPoints } from './convex';
import {
  clipped,
  type Plane,
  type Polyhedron,
  planeAxes,
  planeOf,
  planesOf,
  polyhedraOf,
  polyhedronMesh,
  samePlane,
} from './polyhedron';
import { coreDistance } from './separation';
import type { PosedShape } from './solid';

/** What an item let into a block takes out of it. */
export interface Pocket {
  readonly volumeMm3: number;
  /** The removed material at 1 g/mm³, aircraft frame. */
  readonly removed: MassProperties;
  /** From the face it is cut from to its bottom, mm; the block's thickness there when it goes through. */
  readonly depthMm: number;
  /** True when it reaches the far side. */
  readonly through: boolean;
  /** False when no face of the block is open to it: then the nearest face is taken. */
  readonly openToFace: boolean;
  /** The outward normal of the face it is cut from, aircraft frame. */
  readonly faceNormal: Vec3;
  /** Its shadow on that face, convex, counterclockwise seen from outside, in the face's own axes, mm. */
  readonly outlineMm: readonly Corner[];
  /** The corners of the outline on the face, aircraft frame, mm. */
  readonly outlineInPlaceMm: readonly Vec3[];
  /** The face's own outline in the same axes as the pocket's, convex, mm. */
  readonly faceOutlineMm: readonly Corner[];
  /** The least thickness left to a face that it does not break, mm; null when it breaks them all. */
  readonly wallLeftMm: number | null;
}

const parts = perObject(polyhedraOf);
const clippers = perObject((shape: Shape) => parts(shape).map(planesOf));
const skin = perObject((shape: Shape) => {
  const { verticesMm, triangles } = tessellate(shape, { segments: 96 });
  return triangles.map((triangle) => triangle.map((i) => verticesMm[i]!));
});

/** Volumes smaller than this are a touch, mm³. */
const leastVolumeMm3 = 1e-6;
const onFaceMm = 1e-5;

/**
 * The overlap of an item with a block, as a pocket cut into it. Exact for flat-faced shapes; round ones are
 * cut as 96-sided. The block's shape must not be a mesh that is not convex. Null when the two do not overlap.
 */
export function pocketIn(block: PosedShape, thing: PosedShape): Pocket | null {
  const bodies = overlapBodies(block, thing);
  let removed = noMass;
  for (const body of bodies) {
    const { volumeMm3, centroidMm, inertiaAboutCentroidMm5 } = meshProperties(polyhedronMesh(body));
    if (!centroidMm || volumeMm3 <= 0) continue;
    const mass: MassProperties = {
      massG: volumeMm3,
      cgMm: centroidMm,
      inertiaAboutCgGmm2: inertiaAboutCentroidMm5,
    };
    removed = body.sign > 0 ? massAdd(removed, mass) : massRemove(removed, mass);
  }
  if (removed.massG <= leastVolumeMm3) return null;

  const points = bodies.flatMap(({ faces }) => faces.flat());
  const faces = blockFaces(block.shape);
  const face = entryFace(bodies, points, faces);
  const { axes } = face;
  const flat = (p: Vec3): Corner => [dot(p, axes[0]), dot(p, axes[1])];
  const outlineMm = convexHull(points.map(flat));
  const below = (p: Vec3) => face.plane.offsetMm - dot(p, face.plane.normal);
  const { normal, offsetMm } = face.plane;
  const lifted = ([u, v]: Corner): Vec3 => [
    u * axes[0][0] + v * axes[1][0] + offsetMm * normal[0],
    u * axes[0][1] + v * axes[1][1] + offsetMm * normal[1],
    u * axes[0][2] + v * axes[1][2] + offsetMm * normal[2],
  ];
  const broken = faces.filter(({ plane }) =>
    points.some((p) => dot(p, plane.normal) - plane.offsetMm > -onFaceMm),
  );
  const turned = pointToAircraft({ ...block.pose, positionMm: [0, 0, 0] }, normal);
  return {
    volumeMm3: removed.massG,
    removed: massPlace(removed, block.pose),
    depthMm: Math.max(...points.map(below)),
    through: broken.some(({ plane }) => dot(plane.normal, normal) < -1 + 1e-9),
    openToFace: broken.includes(face),
    faceNormal: turned,
    outlineMm,
    outlineInPlaceMm: outlineMm.map((corner) => pointToAircraft(block.pose, lifted(corner))),
    faceOutlineMm: convexHull(face.corners.map(flat)),
    wallLeftMm: wallLeft(bodies, faces, broken),
  };
}

/** The overlap in the block's own frame. */
function overlapBodies(block: PosedShape, thing: PosedShape): Polyhedron[] {
  const [from, to] = [poseRotation(thing.pose), poseRotation(block.pose)];
  const [tx, ty, tz] = thing.pose.positionMm;
  const [bx, by, bz] = block.pose.positionMm;
  const here = (p: Vec3): Vec3 => {
    const [x, y, z] = turn(from, p);
    return turnBack(to, [x + tx - bx, y + ty - by, z + tz - bz]);
  };
  return parts(thing.shape).flatMap(({ faces, sign }) => {
    const moved: Polyhedron = { faces: faces.map((face) => face.map(here)), sign };
    return clippers(block.shape).flatMap((planes) => clipped(moved, planes) ?? []);
  });
}

interface Face {
  readonly plane: Plane;
  /** Its triangles as solids, to measure how far something is from them. */
  readonly sides: readonly Convex[];
  readonly corners: readonly Vec3[];
  readonly axes: readonly [Vec3, Vec3];
}

/** The flat faces of a block, each with its triangles. */
const blockFaces = perObject((shape: Shape): readonly Face[] => {
  const faces: { plane: Plane; triangles: (readonly Vec3[])[] }[] = [];
  for (const triangle of skin(shape)) {
    const plane = planeOf(triangle);
    if (!plane) continue;
    const sameFace = faces.find((candidate) => samePlane(candidate.plane, plane));
    if (sameFace) sameFace.triangles.push(triangle);
    else faces.push({ plane, triangles: [triangle] });
  }
  return faces.map(({ plane, triangles }) => ({
    plane,
    sides: triangles.map(convexOfPoints),
    corners: triangles.flat(),
    axes: planeAxes(plane.normal),
  }));
});

/** The face that the pocket opens most in; where it opens in none, the nearest. */
function entryFace(bodies: readonly Polyhedron[], points: readonly Vec3[], faces: readonly Face[]): Face {
  const rims = bodies.flatMap((body) => body.faces);
  const opening = ({ plane, axes: [u, v] }: Face) => {
    let area = 0;
    for (const side of rims) {
      if (side.some((p) => Math.abs(dot(p, plane.normal) - plane.offsetMm) > onFaceMm)) continue;
      area += Math.abs(polygonArea(side.map((p): Corner => [dot(p, u), dot(p, v)])));
    }
    return area;
  };
  const depth = ({ plane }: Face) => Math.min(...points.map((p) => plane.offsetMm - dot(p, plane.normal)));
  const open = faces.map((face) => ({ face, area: opening(face) })).filter(({ area }) => area > 0);
  if (open.length > 0)
    return open.reduce((most, candidate) => (candidate.area > most.area + 1e-9 ? candidate : most)).face;
  return faces.reduce((least, face) => (depth(face) < depth(least) ? face : least));
}

function wallLeft(
  bodies: readonly Polyhedron[],
  faces: readonly Face[],
  broken: readonly Face[],
): number | null {
  const sides = faces.filter((face) => !broken.includes(face)).flatMap((face) => face.sides);
  if (sides.length === 0) return null;
  let least = Number.POSITIVE_INFINITY;
  for (const { faces: bodyFaces } of bodies) {
    const body = convexOfPoints(bodyFaces.flat());
    for (const side of sides) least = Math.min(least, coreDistance(body, side, least));
  }
  return least;
}
