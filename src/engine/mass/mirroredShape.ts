import type { Shape } from './shapes';

/**
 * The same shape with left and right exchanged in its own frame (y → −y). Shapes that are alike on both
 * sides come back as they are. A panel's span runs to the right by definition, so it has no mirror image
 * of its own kind; mirror its mass or its pose instead.
 */
export function mirroredShape<S extends Shape>(shape: S): S;
export function mirroredShape(shape: Shape): Shape {
  switch (shape.kind) {
    case 'prism':
      return { ...shape, outlineMm: shape.outlineMm.map(([y, z]) => [-y, z] as const) };
    case 'loft':
      return {
        ...shape,
        sections: shape.sections.map((section) => ({ ...section, centreYMm: -section.centreYMm })),
      };
    case 'mesh':
      return {
        ...shape,
        verticesMm: shape.verticesMm.map(([x, y, z]) => [x, -y, z] as const),
        triangles: shape.triangles.map(([a, b, c]) => [a, c, b] as const),
      };
    case 'panel':
      throw new Error('A panel has no mirror image of its own kind: its span runs to the right.');
    case 'box':
    case 'taperedBox':
    case 'cylinder':
    case 'tube':
    case 'frustum':
    case 'sphere':
    case 'ellipsoid':
    case 'capsule':
      return shape;
  }
}
