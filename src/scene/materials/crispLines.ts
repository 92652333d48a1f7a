import { Color, DoubleSide, type InstancedInterleavedBuffer, type InterleavedBufferAttribute } from 'three';
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js';

interface CrispLines {
  readonly object: LineSegments2;
  /** The ends of the lines in place; changes are sent with `sendLines`. */
  readonly ends: Float32Array;
  dispose(): void;
}

/** Many lines of many colours in one draw call, of a width that the screen keeps. */
export function createCrispLines(
  ends: Float32Array,
  colors: Float32Array,
  look: { readonly widthPx: number; readonly opacity: number; readonly renderOrder: number },
): CrispLines {
  const geometry = new LineSegmentsGeometry().setPositions(ends).setColors(colors);
  const material = new LineMaterial({
    color: new Color('#ffffff').getHex(),
    vertexColors: true,
    linewidth: look.widthPx,
    opacity: look.opacity,
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
  });
  const object = new LineSegments2(geometry, material);
  object.renderOrder = look.renderOrder;
  object.frustumCulled = false;
  return {
    object,
    ends: bufferOf(object).array as Float32Array,
    dispose: () => {
      geometry.dispose();
      material.dispose();
    },
  };
}

const bufferOf = (object: LineSegments2): InstancedInterleavedBuffer =>
  (object.geometry.getAttribute('instanceStart') as InterleavedBufferAttribute)
    .data as InstancedInterleavedBuffer;

/** Sends so many figures of the ends, from one on, to the graphics card. */
export function sendLines(object: LineSegments2, from: number, count: number): void {
  const buffer = bufferOf(object);
  buffer.addUpdateRange(from, count);
  buffer.needsUpdate = true;
}
