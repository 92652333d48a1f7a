import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { crosses, type LabelAsk, type LabelBox, labelLayout } from '../../src/interaction/labelLayout';

/** The stages of the windows that people have, px. */
const STAGES = [
  [851, 420],
  [1331, 620],
  [820, 480],
  [390, 300],
  [844, 210],
  [720, 210],
].map(([width, height]) => ({ left: 0, top: 0, width, height }) as LabelBox);
const ask = (id: string, x: number, y: number, must = false): LabelAsk => ({
  id,
  x,
  y,
  width: 90,
  height: 22,
  must,
});
const meet = (a: LabelBox, b: LabelBox) =>
  a.left < b.left + b.width &&
  b.left < a.left + a.width &&
  a.top < b.top + b.height &&
  b.top < a.top + a.height;

describe.each(STAGES)('labels on a stage of $width × $height', (stage) => {
  test('none covers another or what is taken, none leaves the stage, no leader runs through a label', () => {
    const at = fc.tuple(
      fc.integer({ min: -50, max: stage.width + 50 }),
      fc.integer({ min: -50, max: stage.height + 50 }),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(at, fc.boolean()), { maxLength: 14 }), at, (points, [left, top]) => {
        const taken = [
          { left, top, width: 36, height: 36 },
          { left: stage.width - 220, top: 12, width: 206, height: 40 },
        ];
        const asks = points.map(([[x, y], must], i) => ask(String(i), x, y, must));
        const boxes = [...labelLayout(asks, taken, stage).values()];
        for (const [i, box] of boxes.entries()) {
          expect(box.left).toBeGreaterThanOrEqual(0);
          expect(box.left + box.width).toBeLessThanOrEqual(stage.width);
          expect(box.top).toBeGreaterThanOrEqual(0);
          expect(box.top + box.height).toBeLessThanOrEqual(stage.height);
          for (const other of [...boxes.slice(i + 1), ...taken]) expect(meet(box, other)).toBe(false);
          for (const other of boxes) {
            if (box.leader && other !== box) expect(crosses(box.leader, other)).toBe(false);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('a label', () => {
  const stage: LabelBox = { left: 0, top: 0, width: 800, height: 600 };

  test('stands close above its point, with a short line to it, where there is room', () => {
    const box = labelLayout([ask('a', 400, 300)], [], stage).get('a');
    expect(box?.left).toBe(355);
    expect(box?.leader).toEqual([400, (box?.top ?? 0) + 22, 400, 300]);
    expect(300 - ((box?.top ?? 0) + 22)).toBeLessThanOrEqual(12);
  });

  test('gives way to one asked for before it, and keeps its place beside its point while that is free', () => {
    const first = labelLayout([ask('a', 400, 300), ask('b', 404, 300)], [], stage);
    const [a, b] = [first.get('a'), first.get('b')];
    if (!a || !b) throw new Error('both have room');
    expect(meet(a, b)).toBe(false);
    // Alone it would stand above; having stood elsewhere it stays there, so that it does not jump.
    const kept = labelLayout([ask('b', 410, 302)], [], stage, new Map([['b', [b.left - 404, b.top - 300]]]));
    expect(kept.get('b')).toMatchObject({ left: b.left + 6, top: b.top + 2 });
  });

  test('is led to its point from afar when all around it is taken, and left out when it may be', () => {
    const taken = [{ left: 200, top: 100, width: 400, height: 400 }];
    expect(labelLayout([ask('a', 400, 300)], taken, stage).size).toBe(0);
    const box = labelLayout([ask('a', 400, 300, true)], taken, stage).get('a');
    expect(box?.leader?.slice(2)).toEqual([400, 300]);
  });

  test('whose point is off the stage is left out', () => {
    expect(labelLayout([ask('a', -4, 300, true)], [], stage).size).toBe(0);
  });
});
