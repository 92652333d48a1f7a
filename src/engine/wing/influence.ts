import type { Vec3 } from '../geometry/types';
import type { Lattice } from './lattice';

/** Keeps |r| above 0 when a point falls on a node; as a share of δ² it is lost in rounding elsewhere. */
const NEVER_ZERO = 1e-12;

const PER_FOUR_PI = 1 / (4 * Math.PI);

/**
 * The influence matrix, row-major: entry (i, j) is the velocity along normal i at control point i that
 * horseshoe j of unit strength and its image on the left half induce, 1/mm.
 */
export function influenceMatrix(lattice: Lattice): Float64Array {
  const { size, controls, normals } = lattice;
  const matrix = new Float64Array(size * size);
  for (const patch of lattice.patches) {
    const last = patch.firstHorseshoe + patch.rows * patch.strips;
    for (let i = patch.firstHorseshoe; i < last; i++) {
      const felt = { at: triple(controls, i), along: triple(normals, i), component: patch.component };
      const into = { sums: matrix, from: i * size };
      addWash(lattice, felt, into);
      addWash(lattice, mirrored(felt), into);
    }
  }
  return matrix;
}

/**
 * Velocity over the freestream's that circulations (Γ/V, mm) and their images induce at a point off the
 * surfaces, aircraft frame. Every vortex has its core here: its patch's own, or the one given (mm), which may
 * be finer where no trailing legs are near.
 */
export function inducedVelocity(
  lattice: Lattice,
  circulationsMm: Float64Array,
  pointMm: Vec3,
  coreMm?: number,
): Vec3 {
  const along = (way: Vec3): number => {
    const into = { sums: new Float64Array(lattice.size), from: 0 };
    const felt = { at: pointMm, along: way, component: NO_COMPONENT, coreMm };
    addWash(lattice, felt, into);
    addWash(lattice, mirrored(felt), into);
    return into.sums.reduce((sum, value, j) => sum + value * (circulationsMm[j] as number), 0);
  };
  return [along([1, 0, 0]), along([0, 1, 0]), along([0, 0, 1])];
}

const NO_COMPONENT = -1;

/** Where a velocity is felt, and along which way it is asked for. */
interface Felt {
  readonly at: Vec3;
  readonly along: Vec3;
  /** The component that the point lies on; its own vortices have no core there. */
  readonly component: number;
  /** In place of each patch's own. */
  readonly coreMm?: number | undefined;
}

/** A row of numbers, one for each horseshoe, that is added to. */
interface Sums {
  readonly sums: Float64Array;
  readonly from: number;
}

/** A row of horseshoes side by side: so many strips from a node on. */
interface VortexRow {
  readonly nodes: Float64Array;
  readonly node: number;
  readonly strips: number;
}

const triple = (from: Float64Array, index: number): Vec3 => [
  from[3 * index] as number,
  from[3 * index + 1] as number,
  from[3 * index + 2] as number,
];

/** The image induces at P what the original induces at the mirror of P, mirrored. */
const mirrored = ({ at: [x, y, z], along: [nx, ny, nz], ...felt }: Felt): Felt => ({
  ...felt,
  at: [x, -y, z],
  along: [nx, -ny, nz],
});

/** Adds what each horseshoe of the lattice induces there. */
function addWash(lattice: Lattice, felt: Felt, { sums, from }: Sums): void {
  const { nodes } = lattice;
  for (const { component, coreMm, rows, strips, firstHorseshoe, firstNode } of lattice.patches) {
    const core = felt.coreMm ?? coreMm;
    for (let row = 0; row < rows; row++) {
      const into = { sums, from: from + firstHorseshoe + row * strips };
      const vortices = { nodes, node: firstNode + row * (strips + 1), strips };
      if (component === felt.component) addRow(vortices, felt, into);
      else addCoredRow(vortices, felt, into, core * core);
    }
  }
}

/**
 * Biot–Savart for one row of horseshoes, neighbours sharing their trailing legs. With r1, r2 from the
 * ends of a bound leg to the point: (r1 × r2)(|r1| + |r2|) / (|r1||r2|(|r1||r2| + r1·r2)), and for a leg
 * from a node aft along x: (x̂ × r) / (|r|(|r| − r_x)); neither is singular except on the vortex itself.
 * Source: Katz & Plotkin, Low-Speed Aerodynamics, ch. 12 and 13 (from memory), rearranged.
 */
function addRow({ nodes, node, strips }: VortexRow, { at, along: way }: Felt, { sums, from }: Sums): void {
  const [x, y, z] = at;
  const [nx, ny, nz] = way;
  let x1 = x - (nodes[3 * node] as number);
  let y1 = y - (nodes[3 * node + 1] as number);
  let z1 = z - (nodes[3 * node + 2] as number);
  let r1 = Math.sqrt(x1 * x1 + y1 * y1 + z1 * z1);
  let leg1 = (nz * y1 - ny * z1) / (r1 * (r1 - x1));
  for (let k = 0; k < strips; k++) {
    const next = 3 * (node + k + 1);
    const x2 = x - (nodes[next] as number);
    const y2 = y - (nodes[next + 1] as number);
    const z2 = z - (nodes[next + 2] as number);
    const r2 = Math.sqrt(x2 * x2 + y2 * y2 + z2 * z2);
    const leg2 = (nz * y2 - ny * z2) / (r2 * (r2 - x2));
    const along = nx * (y1 * z2 - z1 * y2) + ny * (z1 * x2 - x1 * z2) + nz * (x1 * y2 - y1 * x2);
    const product = r1 * r2;
    const bound = (along * (r1 + r2)) / (product * (product + x1 * x2 + y1 * y2 + z1 * z2));
    sums[from + k] = (sums[from + k] as number) + (leg2 - leg1 + bound) * PER_FOUR_PI;
    x1 = x2;
    y1 = y2;
    z1 = z2;
    r1 = r2;
    leg1 = leg2;
  }
}

/**
 * The same row as felt by another surface, with a core: 1/d² of a leg, and 1/h² of a
 * bound leg, become (d² + 2δ²)/(d² + δ²)². With δ one strip width, the row of trailing legs acts as the smooth sheet it stands
 * for, whether a tail lies in it or above it and whether or not strips line up; far off the change is of
 * order (δ/d)⁴. Source: high-order algebraic smoothing, e.g. Krasny, J. Comput. Phys. 65, 1986, and
 * Beale & Majda, J. Comput. Phys. 58, 1985 (idea from memory).
 */
function addCoredRow(
  { nodes, node, strips }: VortexRow,
  { at, along }: Felt,
  { sums, from }: Sums,
  core2: number,
): void {
  const [x, y, z] = at;
  const [nx, ny, nz] = along;
  let x1 = x - (nodes[3 * node] as number);
  let y1 = y - (nodes[3 * node + 1] as number);
  let z1 = z - (nodes[3 * node + 2] as number);
  let d2 = y1 * y1 + z1 * z1;
  let r1 = Math.sqrt(x1 * x1 + d2 + core2 * NEVER_ZERO);
  let leg1 = ((nz * y1 - ny * z1) * (1 + x1 / r1) * (d2 + 2 * core2)) / ((d2 + core2) * (d2 + core2));
  for (let k = 0; k < strips; k++) {
    const next = 3 * (node + k + 1);
    const x2 = x - (nodes[next] as number);
    const y2 = y - (nodes[next + 1] as number);
    const z2 = z - (nodes[next + 2] as number);
    d2 = y2 * y2 + z2 * z2;
    const r2 = Math.sqrt(x2 * x2 + d2 + core2 * NEVER_ZERO);
    const leg2 = ((nz * y2 - ny * z2) * (1 + x2 / r2) * (d2 + 2 * core2)) / ((d2 + core2) * (d2 + core2));
    const cx = y1 * z2 - z1 * y2;
    const cy = z1 * x2 - x1 * z2;
    const cz = x1 * y2 - y1 * x2;
    const bx = x1 - x2;
    const by = y1 - y2;
    const bz = z1 - z2;
    const length2 = bx * bx + by * by + bz * bz;
    const h2 = (cx * cx + cy * cy + cz * cz) / length2;
    const ends = (bx * x1 + by * y1 + bz * z1) / r1 - (bx * x2 + by * y2 + bz * z2) / r2;
    const bound =
      ((nx * cx + ny * cy + nz * cz) * ends * (h2 + 2 * core2)) / (length2 * (h2 + core2) * (h2 + core2));
    sums[from + k] = (sums[from + k] as number) + (leg2 - leg1 + bound) * PER_FOUR_PI;
    x1 = x2;
    y1 = y2;
    z1 = z2;
    r1 = r2;
    leg1 = leg2;
  }
}
