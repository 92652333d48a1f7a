import type { Mat3, Vec3 } from '../geometry/types';
import { cross } from '../geometry/vec3';

/** Units that the figures of a mesh file can be in; the file itself does not say. */
export const meshUnits = ['mm', 'cm', 'm', 'in'] as const;
export type MeshUnit = (typeof meshUnits)[number];

/** mm in one unit. An inch is 25.4 mm by definition (international yard and pound agreement, 1959). */
export const mmPerUnit: Readonly<Record<MeshUnit, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4 };

/** A direction along one of the file's own axes. */
export const meshWays = ['+x', '-x', '+y', '-y', '+z', '-z'] as const;
export type MeshWay = (typeof meshWays)[number];

const vectors: Readonly<Record<MeshWay, Vec3>> = {
  '+x': [1, 0, 0],
  '-x': [-1, 0, 0],
  '+y': [0, 1, 0],
  '-y': [0, -1, 0],
  '+z': [0, 0, 1],
  '-z': [0, 0, -1],
};

/** The ways that can be up when the nose points another: those across it. */
export const waysAcross = (nose: MeshWay): readonly MeshWay[] => meshWays.filter((way) => way[1] !== nose[1]);

/** Turns the file's axes to the aircraft's: its nose forward (−x), its up upward (z). Never mirrors. */
export function fileToAircraft(nose: MeshWay, up: MeshWay): Mat3 {
  const forward = vectors[nose];
  const x: Vec3 = [-forward[0] || 0, -forward[1] || 0, -forward[2] || 0];
  const z = vectors[up];
  const y = cross(z, x);
  return [...x, ...y, ...z] as unknown as Mat3;
}

/** Loose triangles from a file's figures: turned to the aircraft's axes, in mm. */
export function inAircraft(
  figures: ArrayLike<number>,
  unit: MeshUnit,
  nose: MeshWay,
  up: MeshWay,
): Float64Array {
  const scale = mmPerUnit[unit];
  const m = fileToAircraft(nose, up);
  const out = new Float64Array(figures.length);
  for (let i = 0; i + 2 < figures.length; i += 3) {
    const [x, y, z] = [figures[i]! * scale, figures[i + 1]! * scale, figures[i + 2]! * scale];
    out[i] = m[0] * x + m[1] * y + m[2] * z;
    out[i + 1] = m[3] * x + m[4] * y + m[5] * z;
    out[i + 2] = m[6] * x + m[7] * y + m[8] * z;
  }
  return out;
}

/** How far figures reach along each of the file's own axes, in its own unit. */
export function fileSpan(figures: ArrayLike<number>): Vec3 {
  const span = [0, 1, 2].map((axis) => {
    let [low, high] = [Infinity, -Infinity];
    for (let i = axis; i < figures.length; i += 3) {
      low = Math.min(low, figures[i]!);
      high = Math.max(high, figures[i]!);
    }
    return high >= low ? high - low : 0;
  });
  return span as unknown as Vec3;
}

/** Below this a longest side in mm is taken for metres until a person says otherwise. */
const smallMm = 15;

/**
 * A first guess, for a person to look at. glTF says of itself: metres, y up, the front at +z (glTF 2.0 specification,
 * section 3.4). The others say nothing: millimetres unless that would be tiny, z up, the nose at the low end of x.
 */
export function firstGuess(
  format: 'stl' | 'obj' | 'gltf',
  span: Vec3,
): { readonly unit: MeshUnit; readonly nose: MeshWay; readonly up: MeshWay } {
  if (format === 'gltf') return { unit: 'm', nose: '+z', up: '+y' };
  return { unit: Math.max(...span) < smallMm ? 'm' : 'mm', nose: '-x', up: '+z' };
}
