import { pointFromAircraft, poseRotation, turn } from '../geometry/rotation';
import { spatialOrder } from '../geometry/spatialOrder';
import type { Pose, Vec3 } from '../geometry/types';
import { add, addScaled, cross, length, normalise, scale, sub } from '../geometry/vec3';
import type { LoftSection, LoftShape, MeshShape } from '../mass/shapes';
import { sectionBetween } from '../mass/solids/loft';
import { sectionRing } from '../mass/tessellate';
import { meshHolds } from '../mesh/meshHolds';
import { straightStretches } from './convexPieces';
import { furthestAlong, pointSolid, waysRound } from './outline';
import { nearestPoints, type ShapeDistance } from './shapeDistance';
import type { Solid } from './solid';
import { type Triangle, type TriangleTree, triangleTree } from './triangleTree';

/** A hollow hull where it stands. Its wall lies inside the loft's surface, or the mesh's where it has one. */
export interface HullShape {
  readonly shape: LoftShape;
  readonly pose: Pose;
  /** The hull's own closed surface; the loft is then an estimate of it, for what asks only for a section. */
  readonly mesh?: PosedMesh | undefined;
  readonly skinMm: number;
  /** Ends without a wall, as at a tail pipe. */
  readonly open: { readonly front: boolean; readonly rear: boolean };
}

export interface PosedMesh {
  readonly shape: MeshShape;
  readonly pose: Pose;
}

export interface Hull extends HullShape {
  /** The outer surface in facets, none further than 0.03 mm within it. */
  readonly facets: readonly Triangle[];
  readonly tree: TriangleTree;
}

/** How far a facet's middle may lie within the curve, mm. */
const sagittaMm = 0.03;

/** Facets to a quarter of a corner's round, however large: 0.03 mm up to 800 mm across, beyond that 1/13 000 of the radius. */
const mostSteps = 64;

/** Facets between sections that do not run straight, so that they follow the warped surface. */
const warpedStretches = 4;

export function hullOf(hull: HullShape): Hull {
  const facets = hull.mesh ? meshFacets(hull.mesh, hull.open) : hullFacets(hull);
  return { ...hull, facets, tree: triangleTree(facets) };
}

function hullFacets({ shape: { sections }, pose, open }: HullShape): Triangle[] {
  const radius = Math.max(...sections.map((s) => (s.roundness * Math.max(s.widthMm, s.heightMm)) / 2));
  const fine = radius > 0 ? Math.ceil(Math.PI / 4 / Math.acos(Math.max(0, 1 - sagittaMm / radius))) : 1;
  const steps = Math.min(mostSteps, fine);
  const rotation = poseRotation(pose);
  const ring = (section: LoftSection) =>
    sectionRing(section, steps).map((point) => add(turn(rotation, point), pose.positionMm));
  const facets: Triangle[] = [];
  const put = (a: Vec3, b: Vec3, c: Vec3) => {
    if (length(cross(sub(b, a), sub(c, a))) > 1e-9) facets.push([a, b, c]);
  };
  const cap = (points: readonly Vec3[]) => {
    for (let i = 2; i < points.length; i += 1) put(points[0]!, points[i - 1]!, points[i]!);
  };
  let last = ring(sections[0]!);
  if (!open.front) cap(last);
  sections.slice(1).forEach((to, i) => {
    const from = sections[i]!;
    const straight =
      from.roundness === to.roundness && from.widthMm * to.heightMm === to.widthMm * from.heightMm;
    const cuts = straight ? 1 : Math.max(warpedStretches, straightStretches(from, to));
    for (let k = 1; k <= cuts; k += 1) {
      const next = ring(k === cuts ? to : sectionBetween(from, to, k / cuts));
      next.forEach((corner, j) => {
        const before = (j + next.length - 1) % next.length;
        put(last[before]!, last[j]!, corner);
        put(last[before]!, corner, next[before]!);
      });
      last = next;
    }
  });
  if (!open.rear) cap(last);
  return facets;
}

/** A facet this near to the first or last station is part of that end's wall, mm. */
const endMm = 0.01;

/** A mesh's facets where it stands, neighbours side by side; without the flat wall of an end that is open. */
function meshFacets({ shape, pose }: PosedMesh, open: HullShape['open']): Triangle[] {
  const rotation = poseRotation(pose);
  const corners = shape.verticesMm.map((vertex) => add(turn(rotation, vertex), pose.positionMm));
  const stations = corners.map(([x]) => x);
  const front = stations.reduce((least, x) => Math.min(least, x), Infinity) + endMm;
  const rear = stations.reduce((most, x) => Math.max(most, x), -Infinity) - endMm;
  const facets = shape.triangles
    .map(([a, b, c]): Triangle => [corners[a]!, corners[b]!, corners[c]!])
    .filter((facet) => !(open.front && facet.every(([x]) => x <= front)))
    .filter((facet) => !(open.rear && facet.every(([x]) => x >= rear)));
  return spatialOrder(facets, ([a, b, c]) => [a[0] + b[0] + c[0], a[1] + b[1] + c[1], a[2] + b[2] + c[2]]);
}

/** True when a point (aircraft frame, mm) lies in the hull. Past an open end the last section runs on. */
export function hullHolds({ shape: { sections }, pose, open, mesh }: HullShape, pointMm: Vec3): boolean {
  const [x, y, z] = pointFromAircraft(pose, pointMm);
  const [first, last] = [sections[0]!, sections.at(-1)!];
  if (mesh && x >= first.xMm && x <= last.xMm) {
    return meshHolds(mesh.shape, pointFromAircraft(mesh.pose, pointMm));
  }
  if (x < first.xMm) return open.front && sectionHolds(first, y, z);
  if (x > last.xMm) return open.rear && sectionHolds(last, y, z);
  const at = Math.max(
    1,
    sections.findIndex((section) => section.xMm >= x),
  );
  const [from, to] = [sections[at - 1]!, sections[at]!];
  return sectionHolds(sectionBetween(from, to, (x - from.xMm) / (to.xMm - from.xMm)), y, z);
}

function sectionHolds(section: LoftSection, y: number, z: number): boolean {
  const [a, b] = [section.widthMm / 2, section.heightMm / 2];
  const [u, v] = [Math.abs(y - section.centreYMm), Math.abs(z - section.centreZMm)];
  if (u > a || v > b) return false;
  const [ra, rb] = [a * section.roundness, b * section.roundness];
  const [du, dv] = [u - (a - ra), v - (b - rb)];
  return du <= 0 || dv <= 0 || (du / ra) ** 2 + (dv / rb) ** 2 <= 1;
}

/**
 * The smallest distance from a solid to the hull's inner face (its skin's thickness within the surface),
 * mm; negative by as much as the solid pokes through it. The solid's middle should lie in the hull. The
 * facets make it up to 0.03 mm too small. Points: on the solid, and on the inner face.
 */
export function hullClearance(solid: Solid, hull: Hull): ShapeDistance {
  const found = hull.tree.nearest(solid);
  if (!found) throw new Error('hullClearance: a hull without a surface.');
  if (found.distanceMm === 0) return poke(solid, hull);
  const { distanceMm, pointsMm } = nearestPoints(found.convex, found.triangle);
  const [onItem, onHull] = pointsMm;
  const inwards = scale(sub(onItem, onHull), 1 / distanceMm);
  return {
    distanceMm: distanceMm - hull.skinMm,
    pointsMm: [onItem, addScaled(onHull, inwards, hull.skinMm)],
  };
}

/**
 * How far a solid that cuts the hull stands out of it: from its furthest points in 26 ways, each followed
 * outwards until it stops moving. The 26 reach every corner of a box however it is turned.
 */
function poke(solid: Solid, hull: Hull): ShapeDistance {
  let worst: ShapeDistance = { distanceMm: 0, pointsMm: [solid.minMm, solid.minMm] };
  for (const convex of solid.convexes) {
    for (const start of waysRound) {
      let point = furthestAlong(convex, start);
      let before = 0;
      for (let step = 0; step < 12 && !hullHolds(hull, point); step += 1) {
        const foot = nearestOnHull(point, hull);
        const outwards = normalise(sub(point, foot));
        const distance = length(sub(point, foot));
        if (-distance < worst.distanceMm) worst = { distanceMm: -distance, pointsMm: [point, foot] };
        if (!outwards || distance <= before + 1e-6) break;
        before = distance;
        point = furthestAlong(convex, outwards);
      }
    }
  }
  const [point, foot] = worst.pointsMm;
  const outwards = normalise(sub(point, foot)) ?? [0, 0, 0];
  return {
    distanceMm: worst.distanceMm - hull.skinMm,
    pointsMm: [point, addScaled(foot, outwards, -hull.skinMm)],
  };
}

function nearestOnHull(pointMm: Vec3, hull: Hull): Vec3 {
  const { triangle, convex } = hull.tree.nearest(pointSolid(pointMm))!;
  return nearestPoints(convex, triangle).pointsMm[1];
}
