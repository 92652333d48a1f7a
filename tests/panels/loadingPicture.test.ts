import { describe, expect, test } from 'vitest';
import { neutralPoint } from '../../src/engine/wing/neutralPoint';
import { liftingSurface } from '../../src/model/stability/liftingSurfaces';
import { greatestCl, loadCurves } from '../../src/panels/stability/loadingPicture';
import { surface } from '../model/surface';

const solved = (tipChordMm: number) => {
  const wing = surface({ id: 'wing', spanMm: 900, rootChordMm: 200, tipChordMm });
  const found = neutralPoint([liftingSurface(wing)], { detail: 'fine' });
  if (!found) throw new Error('a wing lifts');
  return { curves: loadCurves(found.strips, found.clAlphaPerRad), meanChordMm: (200 + tipChordMm) / 2 };
};

describe('the loading at a lift coefficient of 1', () => {
  test.each([200, 80])('with a tip chord of %i mm its mean over the span is 1', (tipChordMm) => {
    const [wing] = solved(tipChordMm).curves;
    const points = [...(wing?.points ?? [])].sort((a, b) => a.outMm - b.outMm);
    // ∫(cl·c) dy = CL·S/2, by the trapezoidal rule with the load level at the middle and 0 at the tip.
    const at = [{ outMm: 0, load: points[0]?.load ?? Number.NaN }, ...points, { outMm: 900, load: 0 }];
    const sum = at.slice(1).reduce((all, point, i) => {
      const inner = at[i] ?? point;
      return all + ((point.load + inner.load) / 2) * (point.outMm - inner.outMm);
    }, 0);
    expect(sum / 900).toBeGreaterThan(0.97);
    expect(sum / 900).toBeLessThan(1.03);
  });

  // A strong taper loads the outer wing most, no taper the middle (Raymer, Aircraft Design, ch. 4, from memory).
  test('the greatest local cl is at the middle of a straight wing and well out on a pointed one', () => {
    expect(greatestCl(solved(200).curves)?.outMm).toBeLessThan(100);
    expect(greatestCl(solved(50).curves)?.outMm).toBeGreaterThan(450);
  });
});

test('a surface that hardly lifts is left out, and without strips there is nothing', () => {
  const strip = (surfaceId: string, loadPerRad: number) => ({
    surfaceId,
    buttlineMm: 100,
    waterlineMm: 0,
    chordMm: 200,
    clAtZero: 0,
    clPerRad: loadPerRad,
    loadAtZero: 0,
    loadPerRad,
  });
  const curves = loadCurves([strip('wing', 5), strip('fin', 0.1), strip('tail', 2)], 5);
  expect(curves.map(({ surfaceId }) => surfaceId)).toEqual(['wing', 'tail']);
  expect(loadCurves([], 5)).toEqual([]);
  expect(greatestCl([])).toBeNull();
});
