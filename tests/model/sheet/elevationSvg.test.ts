import { expect, test } from 'vitest';
import { elevationSvg } from '../../../src/model/sheet/elevationSvg';
import { aircraftOf, boxBlock, boxPart } from '../aircraft';

const grey = () => '#808080';
/** A block of 200 × 100 × 50 mm about [100, 0, 0], and a part of 100 × 40 × 20 mm in its middle. */
const plain = aircraftOf(
  [boxBlock('frame', [100, 0, 0], { by: 'weighed', massG: 100 })],
  [{ ...boxPart('pack', 50, [100, 0, 0]), name: '<pack> & "co"' }],
);

const spans = (svg: string) =>
  [...svg.matchAll(/points="([^"]+)"/g)].map(([, points = '']) => {
    const xs = points.split(' ').map((point) => Number(point.split(',')[0]));
    return Math.max(...xs) - Math.min(...xs);
  });

test('an elevation fills 277 mm, everything in the scale that it names', () => {
  // 200 mm of aircraft on 277 mm of paper: 1 : 0.72; the part half as long.
  const side = elevationSvg(plain, 'side', [100, 0, 0], grey);
  expect(spans(side)).toEqual([expect.closeTo(277, 1), expect.closeTo(138.5, 1)]);
  expect(side).toContain('scale 1 : 0.72');
  expect(side).toMatch(/width="277mm" height="78\.25mm"/);
  // Across it is 100 mm.
  expect(spans(elevationSvg(plain, 'front', null, grey))[1]).toBeCloseTo((277 * 40) / 100, 1);
});

test('the mark stands at the CG', () => {
  const at = /translate\(([^)]+)\)/
    .exec(elevationSvg(plain, 'top', [50, 0, 0], grey))?.[1]
    ?.split(',')
    .map(Number);
  expect(at?.[0]).toBeCloseTo(277 / 4, 1);
});

test('names are text, and an aircraft of nothing says so', () => {
  const svg = elevationSvg(plain, 'side', null, grey);
  expect(svg).toContain('&lt;pack&gt; &amp;');
  expect(svg).not.toContain('<pack>');
  expect(elevationSvg(aircraftOf([]), 'side', null, grey)).toContain('nothing to draw');
});
