/**
 * The simplex of the distance search: up to four points of the Minkowski difference a − b, each with
 * the point of a that it came from, and the point of the simplex nearest the origin.
 * One search runs at a time, so that the inner loop allocates nothing.
 */
export const simplex = {
  size: 0,
  /** Points of a − b, three numbers each; the fifth place is for the newcomer. */
  w: new Float64Array(15),
  /** Their points on a. */
  a: new Float64Array(15),
  /** Shares of the corners in the nearest point. */
  share: new Float64Array(4),
  /** The nearest point and its distance squared. */
  x: 0,
  y: 0,
  z: 0,
  squared: 0,
  /** True once the simplex encloses the origin. */
  encloses: false,
};

const { w } = simplex;
const corner = new Int32Array(3);
const weight = new Float64Array(3);
let corners = 0;
let [bestX, bestY, bestZ, best] = [0, 0, 0, 0];

function record(squared: number, x: number, y: number, z: number, count: number): void {
  best = squared;
  bestX = x;
  bestY = y;
  bestZ = z;
  corners = count;
}

function considerPoint(i: number): void {
  const [x, y, z] = [w[i]!, w[i + 1]!, w[i + 2]!];
  const squared = x * x + y * y + z * z;
  if (squared >= best) return;
  record(squared, x, y, z, 1);
  corner[0] = i;
  weight[0] = 1;
}

function considerSegment(i: number, j: number): void {
  const [ax, ay, az] = [w[i]!, w[i + 1]!, w[i + 2]!];
  const [bx, by, bz] = [w[j]! - ax, w[j + 1]! - ay, w[j + 2]! - az];
  const run = bx * bx + by * by + bz * bz;
  const t = run > 0 ? -(ax * bx + ay * by + az * bz) / run : 0;
  if (t <= 0 || t >= 1) {
    considerPoint(t <= 0 ? i : j);
    return;
  }
  const [x, y, z] = [ax + t * bx, ay + t * by, az + t * bz];
  const squared = x * x + y * y + z * z;
  if (squared >= best) return;
  record(squared, x, y, z, 2);
  corner[0] = i;
  corner[1] = j;
  weight[0] = 1 - t;
  weight[1] = t;
}

function considerTriangle(i: number, j: number, k: number): void {
  const [ax, ay, az] = [w[i]!, w[i + 1]!, w[i + 2]!];
  const [bx, by, bz] = [w[j]!, w[j + 1]!, w[j + 2]!];
  const [cx, cy, cz] = [w[k]!, w[k + 1]!, w[k + 2]!];
  const [ux, uy, uz] = [bx - ax, by - ay, bz - az];
  const [vx, vy, vz] = [cx - ax, cy - ay, cz - az];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const area = nx * nx + ny * ny + nz * nz;
  if (area > 1e-24 * (ux * ux + uy * uy + uz * uz) * (vx * vx + vy * vy + vz * vz)) {
    const shareA = nx * (by * cz - bz * cy) + ny * (bz * cx - bx * cz) + nz * (bx * cy - by * cx);
    const shareB = nx * (cy * az - cz * ay) + ny * (cz * ax - cx * az) + nz * (cx * ay - cy * ax);
    const shareC = area - shareA - shareB;
    if (shareA > 0 && shareB > 0 && shareC > 0) {
      const up = (nx * ax + ny * ay + nz * az) / area;
      const squared = up * up * area;
      if (squared >= best) return;
      record(squared, up * nx, up * ny, up * nz, 3);
      corner[0] = i;
      corner[1] = j;
      corner[2] = k;
      weight[0] = shareA / area;
      weight[1] = shareB / area;
      weight[2] = shareC / area;
      return;
    }
  }
  considerSegment(i, j);
  considerSegment(j, k);
  considerSegment(i, k);
}

/** Six times the volume of the tetrahedron from the origin to three corners. */
function six(i: number, j: number, k: number): number {
  return (
    w[i]! * (w[j + 1]! * w[k + 2]! - w[j + 2]! * w[k + 1]!) +
    w[i + 1]! * (w[j + 2]! * w[k]! - w[j]! * w[k + 2]!) +
    w[i + 2]! * (w[j]! * w[k + 1]! - w[j + 1]! * w[k]!)
  );
}

function considerTetrahedron(): boolean {
  // The origin is inside when its four tetrahedra all turn the way of the whole.
  const [a, b, c, d] = [six(3, 6, 9), -six(0, 6, 9), six(0, 3, 9), -six(0, 3, 6)];
  const whole = a + b + c + d;
  if (whole !== 0 && a / whole > 0 && b / whole > 0 && c / whole > 0 && d / whole > 0) return true;
  const turned = Math.sign(whole);
  if (a * turned <= 0) considerTriangle(3, 6, 9);
  if (b * turned <= 0) considerTriangle(0, 6, 9);
  if (c * turned <= 0) considerTriangle(0, 3, 9);
  if (d * turned <= 0) considerTriangle(0, 3, 6);
  return false;
}

/**
 * Finds the nearest point of the simplex to the origin and drops the corners that have no share in it.
 * After C. Ericson, Real-Time Collision Detection, Morgan Kaufmann 2005, ch. 5 and 9.5.
 */
export function reduceSimplex(): void {
  best = Number.POSITIVE_INFINITY;
  corners = 0;
  simplex.encloses = false;
  if (simplex.size === 1) considerPoint(0);
  else if (simplex.size === 2) considerSegment(0, 3);
  else if (simplex.size === 3) considerTriangle(0, 3, 6);
  else if (considerTetrahedron()) {
    simplex.encloses = true;
    simplex.squared = 0;
    return;
  }
  // Corners come in rising order, so each moves down or stays.
  for (let n = 0; n < corners; n += 1) {
    const from = corner[n]!;
    for (let axis = 0; axis < 3; axis += 1) {
      w[3 * n + axis] = w[from + axis]!;
      simplex.a[3 * n + axis] = simplex.a[from + axis]!;
    }
    simplex.share[n] = weight[n]!;
  }
  simplex.size = corners;
  simplex.x = bestX;
  simplex.y = bestY;
  simplex.z = bestZ;
  simplex.squared = best;
}
