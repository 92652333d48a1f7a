import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distanceToLine, sweepingPanel, sweepTip, tipChords } from '../../src/interaction/wingTip';
import { elementPieces } from '../../src/model/airframe/pieces';
import type { Surface } from '../../src/model/document/types';
import { wingPlanform } from '../../src/model/stability/band';
import { between } from '../between';
import { aircraftOf } from '../model/aircraft';
import { surface } from '../model/surface';

const wing = surface({ id: 'wing', spanMm: 600, rootChordMm: 200, tipChordMm: 100 });
const panel = (spanMm: number, sweepMm = 0): Surface['panels'][number] => ({
  ...wing.panels[0]!,
  spanMm,
  sweepMm,
});

describe('where a tip is', () => {
  test('a flat wing: span out, sweep aft, on both sides', () => {
    const swept = { ...wing, panels: [panel(400, 30), panel(200, 50)] };
    expect(tipChords(swept)).toEqual([
      { surfaceId: 'wing', frontMm: [580, 600, 0], rearMm: [680, 600, 0] },
      { surfaceId: 'wing', frontMm: [580, -600, 0], rearMm: [680, -600, 0] },
    ]);
  });

  test('dihedral lifts it by span × tan; a cant of 90° stands it up', () => {
    const [raised] = tipChords({ ...wing, panels: [{ ...panel(600), dihedralDeg: 45 }] });
    expect(raised?.frontMm[2]).toBeCloseTo(600, 9);
    const fin = tipChords({ ...wing, sides: 'centre', cantDeg: 90 });
    expect(fin).toHaveLength(1);
    expect(fin[0]?.frontMm[1]).toBeCloseTo(0, 9);
    expect(fin[0]?.frontMm[2]).toBeCloseTo(600, 9);
  });

  test('the solid that is drawn for the outer panel starts where the panel inside it has its tip', () => {
    const turned = { ...wing, cantDeg: 20, incidenceDeg: 7, panels: [panel(400, 30), panel(200, 50)] };
    const outer = elementPieces(turned).find(({ id }) => id === 'wing.right.2');
    const [tip] = tipChords({ ...turned, panels: turned.panels.slice(0, 1) });
    for (const axis of [0, 1, 2]) {
      expect(tip?.frontMm[axis]).toBeCloseTo(outer?.pose.positionMm[axis] ?? Number.NaN, 9);
    }
  });
});

describe('dragging it aft', () => {
  test('moves the tip so far and nothing else, whatever the incidence', () => {
    fc.assert(
      fc.property(between(-300, 300), between(-8, 8), (aftMm, incidenceDeg) => {
        const before = { ...wing, incidenceDeg };
        const after = sweepTip(before, aftMm, 1e-6);
        const [from, to] = [tipChords(before)[0], tipChords(after)[0]];
        expect(to!.frontMm[0] - from!.frontMm[0]).toBeCloseTo(aftMm, 5);
        expect(to!.frontMm[1]).toBeCloseTo(from!.frontMm[1], 9);
        expect({ ...after, panels: [] }).toEqual({ ...before, panels: [] });
      }),
    );
  });

  // The MAC of a straight taper lies (1 + 2λ)/(3(1 + λ)) of the half span out (Raymer, Aircraft Design, ch. 4,
  // from memory): 4/9 with λ = 1/2, and its leading edge goes aft by that share of the tip's way.
  test('takes the MAC along by its share of the span', () => {
    const lemac = (of: Surface) => wingPlanform(aircraftOf([of]))?.lemacMm ?? Number.NaN;
    expect(lemac(sweepTip(wing, 90, 1)) - lemac(wing)).toBeCloseTo(40, 9);
  });

  test('comes to whole steps of the grid', () => {
    expect(sweepTip(wing, 43, 5).panels[0]?.sweepMm).toBe(45);
    expect(sweepTip(wing, -43.2, 1).panels[0]?.sweepMm).toBe(-43);
  });

  test('stops at 70° of sweep either way', () => {
    const mostMm = 600 * Math.tan((70 * Math.PI) / 180);
    expect(sweepTip(wing, 1e5, 1).panels[0]?.sweepMm).toBeCloseTo(mostMm, 9);
    expect(sweepTip(wing, -1e5, 1).panels[0]?.sweepMm).toBeCloseTo(-mostMm, 9);
  });

  test('bends the outermost panel that is more than a rounded tip', () => {
    const capped = { ...wing, panels: [panel(300), panel(500), panel(50), panel(30)] };
    expect(sweepingPanel(capped)).toBe(1);
    const after = sweepTip(capped, 40, 1);
    expect(after.panels.map(({ sweepMm }) => sweepMm)).toEqual([0, 40, 0, 0]);
    expect(tipChords(after)[0]!.frontMm[0]).toBeCloseTo(540, 9);
  });
});

test('the distance to a line is square to it, and to its ends beyond them', () => {
  expect(distanceToLine([5, 3], [0, 0], [10, 0])).toBeCloseTo(3, 12);
  expect(distanceToLine([13, 4], [0, 0], [10, 0])).toBeCloseTo(5, 12);
  expect(distanceToLine([3, 4], [0, 0], [0, 0])).toBeCloseTo(5, 12);
});
