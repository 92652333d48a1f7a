import { describe, expect, test } from 'vitest';
import { aircraftExtent, itemExtent, neighboursOf } from '../../../src/model/airframe/extent';
import { aircraftOf, boxBlock, boxPart } from '../aircraft';

const DEG = Math.PI / 180;

/** 100 long, 40 wide, 20 high. */
const box = boxPart('pack', 100, [300, 10, -5]);

/** Half sizes of the box square to the axes about a turned one: the sum of its edges' shadows. */
describe('a turned box reaches as far as the shadows of its edges', () => {
  const [sin, cos] = [Math.sin(30 * DEG), Math.cos(30 * DEG)];
  test.each([
    ['as it comes', {}, [50, 20, 10]],
    ['pitched', { pitchDeg: 30 }, [50 * cos + 10 * sin, 20, 50 * sin + 10 * cos]],
    ['yawed', { yawDeg: 30 }, [50 * cos + 20 * sin, 50 * sin + 20 * cos, 10]],
    ['rolled', { rollDeg: 30 }, [50, 20 * cos + 10 * sin, 20 * sin + 10 * cos]],
    ['pitched upright', { pitchDeg: 90 }, [10, 20, 50]],
  ] as const)('%s', (_how, turned, [x, y, z]) => {
    const { minMm, maxMm } = itemExtent({ ...box, ...turned });
    for (const [axis, [middle, half]] of [
      [300, x],
      [10, y],
      [-5, z],
    ].entries()) {
      expect(minMm[axis]).toBeCloseTo(middle! - half!, 9);
      expect(maxMm[axis]).toBeCloseTo(middle! + half!, 9);
    }
  });
});

test('a mirrored pair of blocks reaches as far to the left as to the right', () => {
  // 200 × 100 × 50, its middle 150 to the right.
  const aircraft = aircraftOf([boxBlock('pod', [400, 150, 20], { by: 'foam', gPerMl: 0.03 }, 'both')]);
  expect(aircraftExtent(aircraft)).toEqual({ minMm: [300, -200, -5], maxMm: [500, 200, 45] });
});

test('the whole aircraft is the airframe and everything aboard; what is dragged is not its own neighbour', () => {
  const block = boxBlock('former', [400, 0, 0], { by: 'foam', gPerMl: 0.03 });
  const aircraft = aircraftOf([block], [box, boxPart('camera', 50, [0, -90, 60])]);
  expect(aircraftExtent(aircraft)).toEqual({ minMm: [-50, -110, -25], maxMm: [500, 50, 70] });
  expect(neighboursOf(aircraft, ['pack']).map(({ minMm }) => minMm)).toEqual([
    [-50, -110, 50],
    [300, -50, -25],
  ]);
});
