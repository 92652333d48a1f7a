import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bodyOf, PAPERS, papers } from '../../../src/model/sheet/paper';
import { rulers } from '../../../src/model/sheet/ruler';
import { chooseScale } from '../../../src/model/sheet/scale';
import { OVERLAP_MM, tilesOf } from '../../../src/model/sheet/tiles';
import { between } from '../../between';

test('the papers are A4 of ISO 216 (√2 times as high as wide, an area of 1/16 m²) and 8.5 × 11 in', () => {
  const { a4, letter } = papers;
  expect(a4.highMm / a4.wideMm).toBeCloseTo(Math.SQRT2, 2);
  expect((a4.wideMm * a4.highMm) / 1e6).toBeCloseTo(1 / 16, 3);
  expect([letter.wideMm / 25.4, letter.highMm / 25.4]).toEqual([
    expect.closeTo(8.5, 9),
    expect.closeTo(11, 9),
  ]);
});

test('A4 leaves the 180 mm that ISO 7200 gives a title block', () => {
  expect(bodyOf(papers.a4, false).wideMm).toBe(180);
  for (const id of PAPERS)
    expect(bodyOf(papers[id], true).highMm).toBeLessThan(bodyOf(papers[id], false).highMm);
});

test('a scale fits, and the next larger standard one would not', () => {
  const steps = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8];
  const all = [...steps, ...steps.map((step) => 10 * step), ...steps.map((step) => 100 * step)];
  fc.assert(
    fc.property(between(1, 5e4), between(60, 250), (long, room) => {
      const scale = chooseScale(long, room);
      expect(long / scale).toBeLessThanOrEqual(room * (1 + 1e-6));
      const larger = all.filter((step) => step < scale);
      for (const step of larger) expect(long / step).toBeGreaterThan(room);
    }),
    { numRuns: 200 },
  );
  expect(chooseScale(1440, 180)).toBe(8);
});

test('the rulers are 100 mm and 4 in of 25.4 mm long', () => {
  const long = (of: string) => {
    const found = rulers(3, 5).find((shape) => 'of' in shape && shape.of === of);
    if (found?.kind !== 'polyline') throw new Error(`no ${of}`);
    const [[x0], [x1]] = found.points as [readonly [number, number], readonly [number, number]];
    return x1 - x0;
  };
  expect(long('ruler-mm')).toBeCloseTo(100, 9);
  expect(long('ruler-in')).toBeCloseTo(101.6, 9);
});

test('tiles cover the whole, none leaves its room, and neighbours overlap by what is said', () => {
  const size = between(5, 1500);
  fc.assert(
    fc.property(size, size, (wideMm, highMm) => {
      const room = { wideMm: 180, highMm: 200 };
      const tiles = tilesOf({ wideMm, highMm }, room);
      for (const tile of tiles) {
        expect(tile.wideMm).toBeLessThanOrEqual(room.wideMm);
        expect(tile.highMm).toBeLessThanOrEqual(room.highMm);
        const right = tiles.find(({ row, column }) => row === tile.row && column === tile.column + 1);
        const below = tiles.find(({ row, column }) => column === tile.column && row === tile.row + 1);
        const [toRight, toBottom] = [tile.leftMm + tile.wideMm, tile.topMm + tile.highMm];
        expect(right ? toRight - right.leftMm : toRight).toBeCloseTo(right ? OVERLAP_MM : wideMm, 6);
        expect(below ? toBottom - below.topMm : toBottom).toBeCloseTo(below ? OVERLAP_MM : highMm, 6);
      }
      expect(tiles[0]).toMatchObject({ leftMm: 0, topMm: 0, row: 0, column: 0 });
    }),
    { numRuns: 200 },
  );
});
