import type { Vec3 } from '../geometry/types';
import { type Moments, noMoments, volumeFromMoments } from '../mass/moments';
import type { Mesh, VolumeProperties } from '../mass/types';
import type { TiltedVessel, Vessel, WetCut } from './vessel';

/**
 * Any closed polyhedron, convex or not, cut exactly by the free surface.
 *
 * The wet region is summed as tetrahedra with their common apex on the free surface, one per wet piece of skin
 * (divergence theorem). Those on the free surface itself are flat, so its outline is never needed; its area
 * follows from the wet skin, because the area vectors of a closed surface add up to nothing.
 */
export function polyhedronVessel(mesh: Mesh, full: VolumeProperties): Vessel {
  const skin = skinOf(mesh);
  return { full, tilt: (down) => tiltedPolyhedron(skin, down) };
}

interface Skin {
  readonly vertices: Float64Array;
  readonly corners: Int32Array;
  /** (b − a) × (c − a) of each triangle: twice its area, outward. */
  readonly normals: Float64Array;
}

function skinOf(mesh: Mesh): Skin {
  const vertices = Float64Array.from(mesh.verticesMm.flat());
  const corners = Int32Array.from(mesh.triangles.flat());
  const normals = new Float64Array(corners.length);
  for (let t = 0; t < corners.length; t += 3) {
    const a = corners[t]! * 3;
    const b = corners[t + 1]! * 3;
    const c = corners[t + 2]! * 3;
    const ux = vertices[b]! - vertices[a]!;
    const uy = vertices[b + 1]! - vertices[a + 1]!;
    const uz = vertices[b + 2]! - vertices[a + 2]!;
    const vx = vertices[c]! - vertices[a]!;
    const vy = vertices[c + 1]! - vertices[a + 1]!;
    const vz = vertices[c + 2]! - vertices[a + 2]!;
    normals[t] = uy * vz - uz * vy;
    normals[t + 1] = uz * vx - ux * vz;
    normals[t + 2] = ux * vy - uy * vx;
  }
  return { vertices, corners, normals };
}

function tiltedPolyhedron(skin: Skin, down: Vec3): TiltedVessel {
  const { vertices, corners, normals } = skin;
  const [dx, dy, dz] = down;
  const count = vertices.length / 3;
  const reach = new Float64Array(count);
  let deepest = 0;
  let highest = 0;
  for (let i = 0; i < count; i++) {
    reach[i] = vertices[3 * i]! * dx + vertices[3 * i + 1]! * dy + vertices[3 * i + 2]! * dz;
    if (reach[i]! > reach[deepest]!) deepest = i;
    if (reach[i]! < reach[highest]!) highest = i;
  }
  // The apex is the deepest vertex lifted straight up to the free surface: foot + offset · down.
  const rise = reach[deepest]!;
  const footX = vertices[3 * deepest]! - rise * dx;
  const footY = vertices[3 * deepest + 1]! - rise * dy;
  const footZ = vertices[3 * deepest + 2]! - rise * dz;

  const triangles = corners.length / 3;
  const facing = new Float64Array(triangles);
  const stand = new Float64Array(triangles);
  for (let t = 0; t < triangles; t++) {
    const n = 3 * t;
    const a = corners[n]! * 3;
    facing[t] = normals[n]! * dx + normals[n + 1]! * dy + normals[n + 2]! * dz;
    stand[t] =
      (vertices[a]! - footX) * normals[n]! +
      (vertices[a + 1]! - footY) * normals[n + 1]! +
      (vertices[a + 2]! - footZ) * normals[n + 2]!;
  }

  const cut = (offset: number): WetCut => {
    let volume6 = 0;
    let area2 = 0;
    for (let t = 0; t < triangles; t++) {
      const n = 3 * t;
      const part = wetShare(reach[corners[n]!]!, reach[corners[n + 1]!]!, reach[corners[n + 2]!]!, offset);
      if (part === 0) continue;
      volume6 += part * (stand[t]! - offset * facing[t]!);
      area2 += part * facing[t]!;
    }
    return { volumeMm3: volume6 / 6, surfaceAreaMm2: area2 / 2 };
  };

  const wetted = (offset: number): VolumeProperties => {
    const apex: Vec3 = [footX + offset * dx, footY + offset * dy, footZ + offset * dz];
    const sum = noMoments();
    const polygon = new Float64Array(12);
    for (let t = 0; t < triangles; t++) {
      const n = 3 * t;
      const part = wetShare(reach[corners[n]!]!, reach[corners[n + 1]!]!, reach[corners[n + 2]!]!, offset);
      if (part === 0) continue;
      const size =
        part === 1
          ? wholeTriangle(skin, n, apex, polygon)
          : clipTriangle(skin, n, reach, offset, apex, polygon);
      for (let k = 2; k < size; k++) addTetrahedron(sum, polygon, 3 * (k - 1), 3 * k);
    }
    return volumeFromMoments(sum, apex);
  };

  return { topMm: reach[highest]!, bottomMm: rise, cut, wetted };
}

/** The share of a triangle's area that lies below the surface, from its corners' down · p. */
function wetShare(a: number, b: number, c: number, offset: number): number {
  const wetA = a >= offset;
  const wetB = b >= offset;
  const wetC = c >= offset;
  if (wetA === wetB) {
    if (wetB === wetC) return wetA ? 1 : 0;
    return wetC ? tip(c, a, b, offset) : 1 - tip(c, a, b, offset);
  }
  if (wetA === wetC) return wetB ? tip(b, a, c, offset) : 1 - tip(b, a, c, offset);
  return wetA ? tip(a, b, c, offset) : 1 - tip(a, b, c, offset);
}

/** The share of a triangle that the surface cuts off at its lone corner. */
function tip(lone: number, p: number, q: number, offset: number): number {
  const depth = lone - offset;
  return (depth / (lone - p)) * (depth / (lone - q));
}

/** Writes a triangle's corners relative to the apex. */
function wholeTriangle({ vertices, corners }: Skin, n: number, apex: Vec3, out: Float64Array): number {
  const [x, y, z] = apex;
  for (let k = 0; k < 3; k++) {
    const from = 3 * corners[n + k]!;
    out[3 * k] = vertices[from]! - x;
    out[3 * k + 1] = vertices[from + 1]! - y;
    out[3 * k + 2] = vertices[from + 2]! - z;
  }
  return 3;
}

/** Writes the wet part of a triangle, relative to the apex, as a polygon of 0, 3 or 4 corners; returns how many. */
function clipTriangle(
  skin: Skin,
  n: number,
  reach: Float64Array,
  offset: number,
  apex: Vec3,
  out: Float64Array,
): number {
  const { vertices, corners } = skin;
  let size = 0;
  for (let k = 0; k < 3; k++) {
    const i = corners[n + k]!;
    const j = corners[n + ((k + 1) % 3)]!;
    const wetI = reach[i]! >= offset;
    if (wetI) {
      for (let axis = 0; axis < 3; axis++) out[3 * size + axis] = vertices[3 * i + axis]! - apex[axis]!;
      size++;
    }
    if (wetI !== reach[j]! >= offset) {
      const part = (offset - reach[i]!) / (reach[j]! - reach[i]!);
      for (let axis = 0; axis < 3; axis++) {
        const from = vertices[3 * i + axis]!;
        out[3 * size + axis] = from + part * (vertices[3 * j + axis]! - from) - apex[axis]!;
      }
      size++;
    }
  }
  return size;
}

/**
 * Adds the tetrahedron (apex, polygon corner 0, corner at b, corner at c), the apex being the origin.
 * F. Tonon, J. Math. Stat. 1(1), 2005: the second moments of a tetrahedron are those of its corners and their sum.
 */
function addTetrahedron(m: Moments, p: Float64Array, b: number, c: number): void {
  const ax = p[0]!;
  const ay = p[1]!;
  const az = p[2]!;
  const bx = p[b]!;
  const by = p[b + 1]!;
  const bz = p[b + 2]!;
  const cx = p[c]!;
  const cy = p[c + 1]!;
  const cz = p[c + 2]!;
  const det = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  const sx = ax + bx + cx;
  const sy = ay + by + cy;
  const sz = az + bz + cz;
  const w = det / 120;
  m.m += det / 6;
  m.x += (det / 24) * sx;
  m.y += (det / 24) * sy;
  m.z += (det / 24) * sz;
  m.xx += w * (ax * ax + bx * bx + cx * cx + sx * sx);
  m.yy += w * (ay * ay + by * by + cy * cy + sy * sy);
  m.zz += w * (az * az + bz * bz + cz * cz + sz * sz);
  m.xy += w * (ax * ay + bx * by + cx * cy + sx * sy);
  m.xz += w * (ax * az + bx * bz + cx * cz + sx * sz);
  m.yz += w * (ay * az + by * bz + cy * cz + sy * sz);
}
