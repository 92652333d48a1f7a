import { validateBytes } from 'gltf-validator';
import { Box3, type Mesh } from 'three';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Aircraft } from '../../../src/model/document/types';
import { parseAircraft } from '../../../src/model/reading/read';
import { glbOf } from '../../../src/scene/export/glb';
import { inGltf, modelScene } from '../../../src/scene/export/modelScene';
import { sources } from '../../fuzz/mutants';
import { aircraftOf, boxBlock, boxPart, dunlinText } from '../../model/aircraft';

const colours = { role: () => '#808080', liquid: () => '#1f7fc4' };

// three's exporter reads its own blobs by FileReader, which Node does not have.
beforeAll(() => {
  class Reader {
    result: ArrayBuffer | null = null;
    onloadend: (() => void) | null = null;
    readAsArrayBuffer(blob: Blob) {
      void blob.arrayBuffer().then((bytes) => {
        this.result = bytes;
        this.onloadend?.();
      });
    }
  }
  (globalThis as unknown as { FileReader: unknown }).FileReader ??= Reader;
});

const aircraftIn = (text: string): Aircraft => {
  const read = parseAircraft(text);
  if (!read.ok) throw new Error('it does not read');
  return read.aircraft;
};

test('aircraft with an element of every kind are clean under the Khronos validator', async () => {
  for (const text of [sources[0] ?? '', dunlinText]) {
    const report = await validateBytes(await glbOf(aircraftIn(text), colours));
    const { numErrors, numWarnings, messages } = report.issues;
    expect({ numErrors, numWarnings, messages }).toEqual({ numErrors: 0, numWarnings: 0, messages: [] });
    expect(report.info.totalTriangleCount).toBeGreaterThan(500);
  }
});

test('so is an aircraft with nothing in it', async () => {
  const { issues } = await validateBytes(await glbOf(aircraftOf([]), colours));
  expect(issues.numErrors).toBe(0);
});

describe('the model stands as the aircraft does, in metres, y up and nose to +z', () => {
  // glTF 2.0, 3.4: +y up, the front faces +z, so that −x is right.
  test('aft, right and up', () => {
    expect(inGltf([1000, 0, 0])).toEqual([-0, 0, -1]);
    expect(inGltf([0, 1000, 0])).toEqual([-1, 0, -0]);
    expect(inGltf([0, 0, 1000])).toEqual([-0, 1, -0]);
  });

  test('a box to starboard is where it was put, and a pair on both sides is symmetrical', () => {
    const model = modelScene(
      aircraftOf(
        [boxBlock('pair', [500, 200, 30], { by: 'weighed', massG: 10 }, 'both')],
        [boxPart('right', 100, [300, 50, 20])],
      ),
      colours,
    );
    const boxes = model.children.map((child) => new Box3().setFromObject(child as Mesh));
    const near = (at: number, min: readonly number[], max: readonly number[]) => {
      for (const [axis, value] of [...min, ...max].entries()) {
        const corner = axis < 3 ? boxes[at]!.min : boxes[at]!.max;
        expect(corner.getComponent(axis % 3)).toBeCloseTo(value, 6);
      }
    };
    // 100 × 40 × 20 mm about [300, 50, 20].
    near(2, [-0.07, 0.01, -0.35], [-0.03, 0.03, -0.25]);
    near(0, [-0.25, 0.005, -0.6], [-0.15, 0.055, -0.4]);
    near(1, [0.15, 0.005, -0.6], [0.25, 0.055, -0.4]);
  });

  test('every solid faces outwards: its signed volume is that of the aircraft, left and right alike', () => {
    const model = modelScene(aircraftIn(sources[0] ?? ''), colours);
    for (const child of model.children) expect(signedVolume(child as Mesh)).toBeGreaterThan(0);
  });
});

/** By tetrahedra from the origin (divergence theorem), m³. */
function signedVolume({ geometry }: Mesh): number {
  const at = geometry.getAttribute('position');
  let sum = 0;
  for (let first = 0; first < at.count; first += 3) {
    const [a, b, c] = [0, 1, 2].map((corner) =>
      [0, 1, 2].map((axis) => at.getComponent(first + corner, axis)),
    ) as [number[], number[], number[]];
    sum +=
      a[0]! * (b[1]! * c[2]! - b[2]! * c[1]!) +
      a[1]! * (b[2]! * c[0]! - b[0]! * c[2]!) +
      a[2]! * (b[0]! * c[1]! - b[1]! * c[0]!);
  }
  return sum / 6;
}
