import { type BufferGeometry, Matrix4 } from 'three';
import type { Vec3 } from '../../engine/geometry/types';
import type { Shape } from '../../engine/mass/shapes';
import { shapeGeometry, shapeLinePairs } from './shapeGeometry';

/** A shape as a shared geometry of unit size and the scale that makes it. */
export interface UnitShape {
  readonly geometry: BufferGeometry;
  readonly linePairs: Float32Array;
  readonly scale: Vec3;
}

const UNITS: Readonly<Partial<Record<Shape['kind'], Shape>>> = {
  box: { kind: 'box', lengthMm: 1, widthMm: 1, heightMm: 1 },
  cylinder: { kind: 'cylinder', lengthMm: 1, diameterMm: 1 },
  sphere: { kind: 'sphere', diameterMm: 1 },
};

const made = new Map<string, Omit<UnitShape, 'scale'>>();

function unit(kind: 'box' | 'cylinder' | 'sphere'): Omit<UnitShape, 'scale'> {
  let known = made.get(kind);
  if (!known) {
    const shape = UNITS[kind] as Shape;
    known = { geometry: shapeGeometry(shape, 48), linePairs: shapeLinePairs(shape) };
    made.set(kind, known);
  }
  return known;
}

/** The shared unit geometry of a shape that stretching gives; null for those that must be built. */
export function unitShape(shape: Shape): UnitShape | null {
  switch (shape.kind) {
    case 'box':
      return { ...unit('box'), scale: [shape.lengthMm, shape.widthMm, shape.heightMm] };
    case 'cylinder':
      return { ...unit('cylinder'), scale: [shape.lengthMm, shape.diameterMm, shape.diameterMm] };
    case 'sphere':
      return { ...unit('sphere'), scale: [shape.diameterMm, shape.diameterMm, shape.diameterMm] };
    case 'ellipsoid':
      return { ...unit('sphere'), scale: [shape.lengthMm, shape.widthMm, shape.heightMm] };
    default:
      return null;
  }
}

/** Line pairs stretched by a scale. */
export function scaledPairs(pairs: Float32Array, [x, y, z]: Vec3): Float32Array {
  const scale = new Matrix4().makeScale(x, y, z).elements;
  return pairs.map((value, i) => value * (scale[(i % 3) * 5] ?? 1));
}
