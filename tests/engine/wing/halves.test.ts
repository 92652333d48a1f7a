import { describe, expect, test } from 'vitest';
import { halvesAmong, withHalvesJoined } from '../../../src/engine/wing/halves';
import type { LiftingSurface, WingPanel } from '../../../src/engine/wing/types';
import { flatPanel, surfaceOf } from './builders';

/** A half by itself, from a buttline out to the right (1) or the left (−1). */
const half = (
  id: string,
  side: 1 | -1,
  given: Partial<LiftingSurface> = {},
  panel: Partial<WingPanel> = {},
) =>
  surfaceOf([flatPanel({ tipChordMm: 120, sweepMm: 60, dihedralDeg: 3 * side, ...panel })], {
    id,
    sides: 'centre',
    rootMm: [300, 40 * side, 10],
    // Turned over it reaches out to the left: the span then runs the other way, and dihedral with it.
    cantDeg: side === 1 ? 0 : 180,
    ...given,
  });

const right = half('right', 1);
const left = half('left', -1);
const names = (surfaces: readonly LiftingSurface[]) =>
  halvesAmong(surfaces).map((halves) => `${halves.right.id}+${halves.left.id}`);

describe('a wing entered half by half', () => {
  test('is found in either order, and becomes a pair under the right half’s id', () => {
    const tail = surfaceOf([flatPanel({})], { id: 'tail', rootMm: [900, 0, 0] });
    for (const surfaces of [
      [right, left, tail],
      [tail, left, right],
    ]) {
      expect(names(surfaces)).toEqual(['right+left']);
      const joined = withHalvesJoined(surfaces);
      expect(joined.filter(({ id }) => id !== 'tail')).toEqual([{ ...right, sides: 'both' }]);
      expect(joined).toContain(tail);
    }
  });

  test('two wings of halves are two pairs, each half in one', () => {
    const other = { rootMm: [900, 40, 10] as const };
    const backLeft = half('back left', -1, { rootMm: [900, -40, 10] });
    expect(names([right, half('back right', 1, other), backLeft, left])).toEqual([
      'right+left',
      'back right+back left',
    ]);
    expect(names([right, half('right again', 1), left])).toEqual(['right+left']);
  });

  test('a shape that is not its mirror image is none: off by more than a twentieth of what it spans', () => {
    // The half spans 500 mm, so 25 mm may be between corners or chords.
    const apart = (rootMm: LiftingSurface['rootMm']) => names([right, half('left', -1, { rootMm })]).length;
    expect([apart([324, -40, 10]), apart([326, -40, 10])]).toEqual([1, 0]);
    expect([apart([300, -64, 10]), apart([300, -66, 10])]).toEqual([1, 0]);
    expect([apart([300, -40, -14]), apart([300, -40, -16])]).toEqual([1, 0]);
    const chord = (tipChordMm: number) => names([right, half('left', -1, {}, { tipChordMm })]).length;
    expect([chord(96), chord(94)]).toEqual([1, 0]);
    const cut = [flatPanel({ spanMm: 250 }), flatPanel({ spanMm: 250 })];
    expect(names([right, { ...left, panels: cut }])).toEqual([]);
  });

  test('a pair, a fin in the middle, and a half without a panel are no halves', () => {
    const fin = half('fin', 1, { cantDeg: 90, rootMm: [900, 0, 0] });
    expect(names([fin, { ...fin, id: 'other fin' }])).toEqual([]);
    expect(names([right, { ...left, sides: 'both' }])).toEqual([]);
    expect(names([right, { ...left, panels: [] }])).toEqual([]);
    const none = [right, fin];
    expect(withHalvesJoined(none)).toBe(none);
  });
});
