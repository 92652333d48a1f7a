import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Corner,
  counterclockwise,
  polygonArea,
  polygonCrossesItself,
  polygonMoments,
  turnOf,
} from '../../../src/engine/geometry/polygon';
import { fan, triangulate } from '../../../src/engine/geometry/triangulate';
import { between } from '../../between';

const channel: Corner[] = [
  [0, 0],
  [30, 0],
  [30, 20],
  [20, 20],
  [20, 8],
  [10, 8],
  [10, 20],
  [0, 20],
];

/** A star round the origin: simple, often far from convex. */
const stars = fc.array(between(1, 10), { minLength: 3, maxLength: 24 }).map((radii) =>
  radii.map((r, i): Corner => {
    const angle = (2 * Math.PI * i) / radii.length;
    return [r * Math.cos(angle), r * Math.sin(angle)];
  }),
);

describe('polygon moments', () => {
  test('rectangle b × h about its corner: b³h/3, bh³/3, b²h²/4', () => {
    const m = polygonMoments([
      [0, 0],
      [6, 0],
      [6, 4],
      [0, 4],
    ]);
    expect(m).toEqual({ area: 24, u: 72, v: 48, uu: 288, uv: 144, vv: 128 });
  });

  test('right triangle about its right angle: b³h/12, bh³/12, b²h²/24', () => {
    const m = polygonMoments([
      [0, 0],
      [6, 0],
      [0, 4],
    ]);
    expect(m.area).toBeCloseTo(12, 12);
    expect(m.uu).toBeCloseTo(72, 12);
    expect(m.vv).toBeCloseTo(32, 12);
    expect(m.uv).toBeCloseTo(24, 12);
  });

  test('the other winding turns every sign', () => {
    const there = polygonMoments(channel);
    const back = polygonMoments(channel.toReversed());
    for (const key of ['area', 'u', 'v', 'uu', 'uv', 'vv'] as const)
      expect(back[key]).toBeCloseTo(-there[key], 8);
    expect(counterclockwise(channel.toReversed())).toEqual(channel);
  });

  test('about another point: the parallel-axis rule', () => {
    const here = polygonMoments(channel);
    const there = polygonMoments(channel, 100, -40);
    expect(there.uu).toBeCloseTo(here.uu - 200 * here.u + 10000 * here.area, 6);
    expect(there.uv).toBeCloseTo(here.uv + 40 * here.u - 100 * here.v - 4000 * here.area, 6);
  });
});

describe('outlines that cross themselves', () => {
  test.each<[string, Corner[], boolean]>([
    ['channel', channel, false],
    [
      'triangle',
      [
        [0, 0],
        [1, 0],
        [0, 1],
      ],
      false,
    ],
    [
      'corner on a straight side',
      [
        [0, 0],
        [1, 0],
        [2, 0],
        [2, 2],
        [0, 2],
      ],
      false,
    ],
    [
      'bow tie',
      [
        [0, 0],
        [2, 2],
        [2, 0],
        [0, 2],
      ],
      true,
    ],
    [
      'repeated corner',
      [
        [0, 0],
        [1, 0],
        [1, 0],
        [0, 1],
      ],
      true,
    ],
    [
      'straight back',
      [
        [0, 0],
        [2, 0],
        [1, 0],
        [0, 2],
      ],
      true,
    ],
    [
      'pinched at a corner',
      [
        [0, 0],
        [2, 0],
        [2, 2],
        [1, 0],
        [0, 2],
      ],
      true,
    ],
  ])('%s', (_, outline, crosses) => {
    expect(polygonCrossesItself(outline)).toBe(crosses);
  });

  test('a star never does', () => {
    fc.assert(fc.property(stars, (star) => !polygonCrossesItself(star)));
  });

  test('two edges on one line, apart from each other, do not meet, whichever way they lie and run', () => {
    // A C: its two ends stand one above the other on the line x = 2, with a gap between.
    const c: readonly Corner[] = [
      [0, 0],
      [2, 0],
      [2, 1],
      [1, 1],
      [1, 2],
      [2, 2],
      [2, 3],
      [0, 3],
    ];
    const lying = c.map(([x, y]): Corner => [y, x]);
    for (const outline of [c, lying, c.toReversed(), lying.toReversed()])
      expect(polygonCrossesItself(outline)).toBe(false);
  });
});

describe('triangulation', () => {
  const covers = (outline: readonly Corner[]) => {
    const triangles = triangulate(outline);
    expect(triangles).toHaveLength(outline.length - 2);
    const areas = triangles.map(([a, b, c]) => turnOf(outline[a]!, outline[b]!, outline[c]!) / 2);
    // No triangle is turned over and together they cover the polygon once.
    expect(Math.min(...areas)).toBeGreaterThanOrEqual(0);
    const area = polygonArea(outline);
    expect(Math.abs(areas.reduce((sum, a) => sum + a, 0) - area)).toBeLessThan(1e-12 * area);
  };

  test('a channel, and a square with corners on its sides', () => {
    covers(channel);
    covers([
      [0, 0],
      [1, 0],
      [2, 0],
      [2, 1],
      [2, 2],
      [1, 2],
      [0, 2],
      [0, 1],
    ]);
  });

  test('random stars', () => {
    fc.assert(fc.property(stars, covers));
  });

  test('a fan has n − 2 triangles, none for a line', () => {
    expect(fan(5)).toEqual([
      [0, 1, 2],
      [0, 2, 3],
      [0, 3, 4],
    ]);
    expect(fan(2)).toEqual([]);
  });
});
