import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type FlowPiece, paginate } from '../../../src/model/sheet/paginate';
import { between } from '../../between';

const piece = fc.record(
  {
    heightMm: between(0.5, 60),
    keepWithNext: fc.boolean(),
    startsPage: fc.boolean(),
    tableId: fc.constantFrom('a', 'b'),
    headMm: fc.constant(7),
  },
  { requiredKeys: ['heightMm'] },
);

const heightOf = (pieces: readonly FlowPiece[], page: ReturnType<typeof paginate>[number]): number =>
  page.reduce(
    (sum, { at, withHead }) => sum + pieces[at]!.heightMm + (withHead ? (pieces[at]!.headMm ?? 0) : 0),
    0,
  );

test('no piece is lost, none is out of order, and no page is higher than its room', () => {
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 60 }), (given) => {
      const pieces = given as FlowPiece[];
      const pages = paginate(pieces, 100);
      expect(pages.flat().map(({ at }) => at)).toEqual(pieces.map((_, at) => at));
      for (const page of pages) {
        expect(page.length).toBeGreaterThan(0);
        expect(heightOf(pieces, page)).toBeLessThanOrEqual(100 + 1e-5);
      }
    }),
    { numRuns: 300 },
  );
});

test('every stretch of rows of a table on a page has the head above its first row, and only there', () => {
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 60 }), (given) => {
      const pieces = given as FlowPiece[];
      for (const page of paginate(pieces, 100))
        page.forEach(({ at, withHead }, place) => {
          const { tableId } = pieces[at]!;
          const before = page[place - 1];
          const first = before === undefined || pieces[before.at]!.tableId !== tableId;
          expect(withHead).toBe(tableId !== undefined && first);
        });
    }),
    { numRuns: 300 },
  );
});

test('a heading is not left alone at the foot of a page', () => {
  const pieces: FlowPiece[] = [{ heightMm: 85 }, { heightMm: 8, keepWithNext: true }, { heightMm: 10 }];
  expect(paginate(pieces, 100).map((page) => page.map(({ at }) => at))).toEqual([[0], [1, 2]]);
});

test('what is higher than a page gets one of its own', () => {
  const pages = paginate([{ heightMm: 20 }, { heightMm: 130 }, { heightMm: 20 }], 100);
  expect(pages.map((page) => page.map(({ at }) => at))).toEqual([[0], [1], [2]]);
});
