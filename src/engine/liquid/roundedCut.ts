import { emptySection, type SectionMoments, segmentArea } from './sectionCut';

/** Edge k of the unit section runs from corner arc k − 1 to corner arc k; arc k is centred on CORNERS[k]. */
const CORNERS = [
  [1, 1],
  [-1, 1],
  [-1, -1],
  [1, -1],
] as const;
const QUARTER = Math.PI / 2;
const TURN = 2 * Math.PI;

/**
 * Writes the moments of the part of the unit section (see sectionCut.ts) with n · p ≥ delta, n = (ny, nz) a unit vector,
 * for a waterline that crosses it. The boundary is walked once, anticlockwise: each wet stretch adds the triangle that
 * it spans with a point on the waterline, and each wet arc the circular segment outside its chord.
 */
export function roundedCut(
  roundness: number,
  ny: number,
  nz: number,
  delta: number,
  out: SectionMoments,
): void {
  Object.assign(out, emptySection());
  const walk: Walk = { out, ny, nz, delta, qy: delta * ny, qz: delta * nz, from: Infinity, to: -Infinity };
  const r = roundness;
  const inner = 1 - r;
  const direction = Math.atan2(nz, ny);
  for (let k = 0; k < 4; k++) {
    const [sy, sz] = CORNERS[k]!;
    const [py, pz] = CORNERS[(k + 3) % 4]!;
    const start = k * QUARTER;
    if (inner > 0) {
      const outY = r * Math.round(Math.cos(start));
      const outZ = r * Math.round(Math.sin(start));
      addEdge(walk, inner * py + outY, inner * pz + outZ, inner * sy + outY, inner * sz + outZ);
    }
    if (r > 0) addArc(walk, inner * sy, inner * sz, r, start, direction);
  }
  out.chord = Math.max(0, walk.to - walk.from);
  shift(out, walk.qy, walk.qz);
}

interface Walk {
  /** Moments about q, a point of the waterline. */
  readonly out: SectionMoments;
  readonly ny: number;
  readonly nz: number;
  readonly delta: number;
  readonly qy: number;
  readonly qz: number;
  /** How far along the waterline its ends lie. */
  from: number;
  to: number;
}

function crossing(walk: Walk, y: number, z: number): void {
  const along = y * -walk.nz + z * walk.ny;
  walk.from = Math.min(walk.from, along);
  walk.to = Math.max(walk.to, along);
}

function addEdge(walk: Walk, ay: number, az: number, by: number, bz: number): void {
  const fa = walk.ny * ay + walk.nz * az - walk.delta;
  const fb = walk.ny * by + walk.nz * bz - walk.delta;
  if (fa < 0 && fb < 0) return;
  if (fa >= 0 && fb >= 0) {
    addTriangle(walk, ay, az, by, bz);
    return;
  }
  const part = fa / (fa - fb);
  const my = ay + part * (by - ay);
  const mz = az + part * (bz - az);
  crossing(walk, my, mz);
  if (fa >= 0) addTriangle(walk, ay, az, my, mz);
  else addTriangle(walk, my, mz, by, bz);
}

/** A quarter circle about (cy, cz) from angle `start` on; wet where it points within `half` of `direction`. */
function addArc(walk: Walk, cy: number, cz: number, r: number, start: number, direction: number): void {
  const limit = (walk.delta - walk.ny * cy - walk.nz * cz) / r;
  if (limit >= 1) return;
  if (limit <= -1) {
    addArcPiece(walk, cy, cz, r, start, start + QUARTER);
    return;
  }
  const half = Math.acos(limit);
  for (let turn = -TURN; turn <= TURN; turn += TURN) {
    const low = direction + turn - half;
    const high = direction + turn + half;
    const a = Math.max(start, low);
    const b = Math.min(start + QUARTER, high);
    if (!(b > a)) continue;
    addArcPiece(walk, cy, cz, r, a, b);
    if (a === low) crossing(walk, cy + r * Math.cos(a), cz + r * Math.sin(a));
    if (b === high) crossing(walk, cy + r * Math.cos(b), cz + r * Math.sin(b));
  }
}

function addArcPiece(walk: Walk, cy: number, cz: number, r: number, a: number, b: number): void {
  addTriangle(walk, cy + r * Math.cos(a), cz + r * Math.sin(a), cy + r * Math.cos(b), cz + r * Math.sin(b));
  const alpha = (b - a) / 2;
  const middle = (a + b) / 2;
  const c = Math.cos(alpha);
  const s3 = Math.sin(alpha) ** 3;
  const unitArea = segmentArea(alpha);
  const my = Math.cos(middle);
  const mz = Math.sin(middle);
  const area = r * r * unitArea;
  const first = (2 / 3) * r ** 3 * s3;
  const along = r ** 4 * (unitArea / 4 + (c * s3) / 2);
  const across = r ** 4 * (unitArea / 4 - (c * s3) / 6);
  const oy = cy - walk.qy;
  const oz = cz - walk.qz;
  const { out } = walk;
  out.area += area;
  out.y += oy * area + first * my;
  out.z += oz * area + first * mz;
  out.yy += oy * oy * area + 2 * oy * first * my + along * my * my + across * mz * mz;
  out.zz += oz * oz * area + 2 * oz * first * mz + along * mz * mz + across * my * my;
  out.yz += oy * oz * area + first * (oy * mz + oz * my) + (along - across) * my * mz;
}

/** The triangle between q and two boundary points. */
function addTriangle(walk: Walk, py: number, pz: number, ry: number, rz: number): void {
  const ay = py - walk.qy;
  const az = pz - walk.qz;
  const by = ry - walk.qy;
  const bz = rz - walk.qz;
  const area = (ay * bz - az * by) / 2;
  const y = ay + by;
  const z = az + bz;
  const { out } = walk;
  out.area += area;
  out.y += (area / 3) * y;
  out.z += (area / 3) * z;
  out.yy += (area / 12) * (ay * ay + by * by + y * y);
  out.zz += (area / 12) * (az * az + bz * bz + z * z);
  out.yz += (area / 12) * (ay * az + by * bz + y * z);
}

/** Moves moments taken about (qy, qz) to the section's centre. */
function shift(m: SectionMoments, qy: number, qz: number): void {
  m.yy += 2 * qy * m.y + qy * qy * m.area;
  m.zz += 2 * qz * m.z + qz * qz * m.area;
  m.yz += qy * m.z + qz * m.y + qy * qz * m.area;
  m.y += qy * m.area;
  m.z += qz * m.area;
}
