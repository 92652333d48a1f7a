import { BufferAttribute, BufferGeometry } from 'three';
import { toCreasedNormals } from 'three/examples/jsm/utils/BufferGeometryUtils.js';
import { featureLines } from '../../engine/mass/outline';
import type { Shape } from '../../engine/mass/shapes';
import { tessellate } from '../../engine/mass/tessellate';
import type { Mesh } from '../../engine/mass/types';

/** Facets that meet at more than this stay crisp. */
const CREASE = (38 * Math.PI) / 180;

/** A mesh of the engine's for the graphics card, mm, with normals that are smooth but for creases. */
function meshGeometry({ verticesMm, triangles }: Mesh): BufferGeometry {
  const indexed = new BufferGeometry();
  indexed.setAttribute('position', new BufferAttribute(new Float32Array(verticesMm.flat()), 3));
  indexed.setIndex(triangles.flat());
  const creased = toCreasedNormals(indexed, CREASE);
  if (creased !== indexed) indexed.dispose();
  return creased;
}

export const shapeGeometry = (shape: Shape, segments: number): BufferGeometry =>
  meshGeometry(tessellate(shape, { segments }));

/** The draughtsman's lines of a shape as pairs of points, mm: [x y z x y z, ...]. */
export function shapeLinePairs(shape: Shape): Float32Array {
  const pairs: number[] = [];
  for (const line of featureLines(shape)) {
    for (let i = 1; i < line.length; i += 1) pairs.push(...(line[i - 1] ?? []), ...(line[i] ?? []));
  }
  return new Float32Array(pairs);
}
