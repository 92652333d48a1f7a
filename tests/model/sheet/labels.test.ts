import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Rect, rectsOverlap, type Spot } from '../../../src/model/sheet/drawing';
import { rowBox } from '../../../src/model/sheet/labelShapes';
import { enters, nearLabels } from '../../../src/model/sheet/nearLabels';
import {
  type Labelled,
  type LabelRows,
  leadersCross,
  rowLabels,
  rowsTake,
} from '../../../src/model/sheet/rowLabels';
import { spread } from '../../../src/model/sheet/spread';
import { between } from '../../between';

const rows: LabelRows = { topMm: 20, bottomMm: 120, fromMm: 5.4, toMm: 174.6, gapMm: 5.4 };
const spotIn = ({ leftMm, topMm, rightMm, bottomMm }: Rect): fc.Arbitrary<Spot> =>
  fc.tuple(between(leftMm, rightMm), between(topMm, bottomMm));
const drawingRect: Rect = { leftMm: 0, rightMm: 180, topMm: 25, bottomMm: 115 };
/** Crowded in a corner, all in one place, or all over the drawing. */
const crowd = (most: number): fc.Arbitrary<Labelled[]> =>
  fc
    .oneof(
      fc.array(spotIn(drawingRect), { maxLength: most }),
      fc.array(spotIn({ leftMm: 30, rightMm: 36, topMm: 60, bottomMm: 64 }), { maxLength: most }),
      fc
        .tuple(spotIn(drawingRect), fc.nat({ max: most }))
        .map(([spot, count]) => Array<Spot>(count).fill(spot)),
    )
    .map((spots) => spots.map((at, id) => ({ id: String(id), at })));

const pairs = <T>(list: readonly T[]): readonly (readonly [T, T])[] =>
  list.flatMap((a, at) => list.slice(at + 1).map((b) => [a, b] as const));

/** A second route to whether two segments cross: where their lines meet, by the parameters of both. */
function meet(a: { at: Spot; to: Spot }, b: { at: Spot; to: Spot }): boolean {
  const [ux, uy] = [a.to[0] - a.at[0], a.to[1] - a.at[1]];
  const [vx, vy] = [b.to[0] - b.at[0], b.to[1] - b.at[1]];
  const det = ux * vy - uy * vx;
  if (Math.abs(det) < 1e-9) return false;
  const [wx, wy] = [b.at[0] - a.at[0], b.at[1] - a.at[1]];
  const s = (wx * vy - wy * vx) / det;
  const t = (wx * uy - wy * ux) / det;
  return s > 1e-6 && s < 1 - 1e-6 && t > 1e-6 && t < 1 - 1e-6;
}

test('labels in rows: every thing has one, no two overlap, no two leaders cross, however crowded', () => {
  fc.assert(
    fc.property(crowd(rowsTake(rows)), (things) => {
      const labels = rowLabels(things, rows);
      expect(labels?.map(({ id }) => id).sort()).toEqual(things.map(({ id }) => id).sort());
      for (const [a, b] of pairs(labels!)) {
        const [p, q] = [rowBox(a), rowBox(b)];
        const slim = { ...q, leftMm: q.leftMm + 1e-6, rightMm: q.rightMm - 1e-6 };
        expect(rectsOverlap(p, slim)).toBe(false);
        expect(meet(a, b)).toBe(false);
      }
    }),
    { numRuns: 120 },
  );
});

test('more things than labels is said, not squeezed', () => {
  const things = Array.from(
    { length: rowsTake(rows) + 1 },
    (_, id): Labelled => ({ id: String(id), at: [50, 60] }),
  );
  expect(rowLabels(things, rows)).toBeNull();
});

test('labels beside their things: none overlaps another, covers a mark or what is kept off, or has its leader crossed', () => {
  const within: Rect = { leftMm: 0, rightMm: 180, topMm: 0, bottomMm: 140 };
  const keepOff: readonly Rect[] = [{ leftMm: 80, rightMm: 110, topMm: 50, bottomMm: 80 }];
  fc.assert(
    fc.property(crowd(40), (things) => {
      const { placed, rest } = nearLabels(things, { wideMm: 15, highMm: 5.2, within, keepOff });
      expect(placed.length + rest.length).toBe(things.length);
      for (const { box } of placed) {
        expect(box.leftMm).toBeGreaterThanOrEqual(0);
        expect(box.rightMm).toBeLessThanOrEqual(180);
        expect(rectsOverlap(box, keepOff[0]!)).toBe(false);
        for (const { at } of things)
          expect(at[0] > box.leftMm && at[0] < box.rightMm && at[1] > box.topMm && at[1] < box.bottomMm).toBe(
            false,
          );
      }
      for (const [a, b] of pairs(placed)) {
        expect(rectsOverlap(a.box, b.box)).toBe(false);
        expect(meet(a, b)).toBe(false);
        expect(enters(a, b.box) || enters(b, a.box)).toBe(false);
      }
    }),
    { numRuns: 60 },
  );
});

test('a few things apart all find their label', () => {
  const things = [20, 60, 100, 150].map((x, id): Labelled => ({ id: String(id), at: [x, 70] }));
  const within: Rect = { leftMm: 0, rightMm: 180, topMm: 0, bottomMm: 140 };
  expect(nearLabels(things, { wideMm: 15, highMm: 5.2, within, keepOff: [] }).rest).toEqual([]);
});

test('set apart in a row: in order, inside, far enough apart, and no arrangement on a fine grid is nearer', () => {
  const options = { gapMm: 2, fromMm: 0, toMm: 10 };
  fc.assert(
    fc.property(fc.array(between(-3, 13), { minLength: 3, maxLength: 3 }), (given) => {
      const wanted = [...given].sort((a, b) => a - b);
      const found = spread(wanted, options)!;
      const costOf = (places: readonly number[]) =>
        places.reduce((sum, x, at) => sum + (x - wanted[at]!) ** 2, 0);
      expect(found[0]).toBeGreaterThanOrEqual(-1e-9);
      expect(found[2]).toBeLessThanOrEqual(10 + 1e-9);
      expect(found[1]! - found[0]!).toBeGreaterThanOrEqual(2 - 1e-9);
      expect(found[2]! - found[1]!).toBeGreaterThanOrEqual(2 - 1e-9);
      // Brute force over a grid of 0.25 mm.
      for (let a = 0; a <= 6; a += 0.25)
        for (let b = a + 2; b <= 8; b += 0.25)
          for (let c = b + 2; c <= 10; c += 0.25)
            expect(costOf(found)).toBeLessThanOrEqual(costOf([a, b, c]) + 1e-9);
    }),
    { numRuns: 25 },
  );
  expect(spread([1, 2, 3, 4, 5, 6, 7], options)).toBeNull();
});

test('crossing is seen as by the second route', () => {
  const spot = spotIn(drawingRect);
  fc.assert(
    fc.property(spot, spot, spot, spot, (a, b, c, d) => {
      const [p, q] = [
        { at: a, to: b },
        { at: c, to: d },
      ];
      // Ends that touch are none; the two routes differ there by rounding only.
      fc.pre(
        Math.min(...[a, b].flatMap((s) => [c, d].map((t) => Math.hypot(s[0] - t[0], s[1] - t[1])))) > 0.01,
      );
      if (leadersCross(p, q) !== meet(p, q)) {
        const nearEnd = (x: Spot, { at, to }: typeof p) => {
          const long = Math.hypot(to[0] - at[0], to[1] - at[1]);
          return (
            Math.abs((to[0] - at[0]) * (x[1] - at[1]) - (to[1] - at[1]) * (x[0] - at[0])) / (long || 1) < 1e-3
          );
        };
        expect([a, b].some((x) => nearEnd(x, q)) || [c, d].some((x) => nearEnd(x, p))).toBe(true);
      }
    }),
    { numRuns: 300 },
  );
});
