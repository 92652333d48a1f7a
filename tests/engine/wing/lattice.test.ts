import { describe, expect, test } from 'vitest';
import { influenceMatrix } from '../../../src/engine/wing/influence';
import type { Grid } from '../../../src/engine/wing/lattice';
import { latticeForces, momentCoefficient, solveLattice } from '../../../src/engine/wing/latticeSolution';
import { planform } from '../../../src/engine/wing/planform';
import { spanLoading } from '../../../src/engine/wing/spanLoading';
import type { LiftingSurface } from '../../../src/engine/wing/types';
import { biotSavart, evenly, flatPanel, latticeOf, rectangular, surfaceOf, wingFromChords } from './builders';
import { inducedDragAreaMm2 } from './inducedDrag';

const grid = (rows: number, strips: number, tip: Grid['tip'] = 'inset'): Grid => ({
  rows,
  strips,
  tip,
});

function solved(
  surfaces: readonly LiftingSurface[],
  grids: readonly Grid[],
  main = surfaces[0] as LiftingSurface,
) {
  const circulations = solveLattice(latticeOf(surfaces, grids));
  const plan = planform(main);
  return { ...circulations, ...latticeForces(circulations, plan), plan };
}

describe('influence', () => {
  test('equals Biot–Savart integrated along the vortices, image included', () => {
    const swept = surfaceOf([flatPanel({ sweepMm: 180, tipChordMm: 120, dihedralDeg: 8, rootTwistDeg: 5 })], {
      cantDeg: 12,
      rootMm: [40, 15, -20],
    });
    const lattice = latticeOf([swept], [grid(2, 2, 'flush')]);
    const matrix = influenceMatrix(lattice);
    const at = (values: Float64Array, index: number) =>
      [...values.slice(3 * index, 3 * index + 3)] as [number, number, number];
    for (let i = 0; i < 4; i++) {
      for (let j = 0; j < 4; j++) {
        const left = j + Math.floor(j / 2); // three nodes a row
        const [a, b] = [at(lattice.nodes, left), at(lattice.nodes, left + 1)];
        const point = at(lattice.controls, i);
        const own = biotSavart(a, b, point);
        const image = biotSavart([b[0], -b[1], b[2]], [a[0], -a[1], a[2]], point);
        const normal = at(lattice.normals, i);
        const expected = normal.reduce(
          (sum, n, axis) => sum + n * ((own[axis] ?? 0) + (image[axis] ?? 0)),
          0,
        );
        expect(Math.abs((matrix[4 * i + j] ?? Number.NaN) - expected)).toBeLessThan(
          1e-6 * Math.abs(expected) + 1e-9,
        );
      }
    }
  });
});

describe('limits known without a computer', () => {
  test('very high aspect ratio: local slope 2π, neutral point at the quarter chord', () => {
    const wing = rectangular(10000);
    const { neutralStationMm, ...rest } = solved([wing], [grid(3, 40)]);
    const [root] = spanLoading(rest, ['wing'], rest.plan.meanChordMm);
    expect(Math.abs((root?.clPerRad ?? 0) / (2 * Math.PI) - 1)).toBeLessThan(1e-3);
    expect(Math.abs(neutralStationMm / 200 - 0.25)).toBeLessThan(1e-4);
  });

  test('elliptic wing of aspect ratio 100: slope 2π/(1 + 2/AR) and span efficiency 1 (Prandtl)', () => {
    const wing = wingFromChords(7854, (t) => 200 * Math.sqrt(Math.max(0, 1 - t * t)), evenly(120), 0.25);
    const { clAlphaPerRad, plan, lattice, perRadianMm } = solved(
      [wing],
      [{ rows: 1, strips: 120, tip: 'inset' }],
    );
    expect(Math.abs(clAlphaPerRad / ((2 * Math.PI) / (1 + 2 / plan.aspectRatio)) - 1)).toBeLessThan(0.002);
    const drag = inducedDragAreaMm2(lattice, perRadianMm) / plan.areaMm2;
    expect(Math.abs(clAlphaPerRad ** 2 / (Math.PI * plan.aspectRatio * drag) - 1)).toBeLessThan(0.002);
  });

  test('slender delta: slope π·AR/2, centre at 2/3 of the root chord (R. T. Jones, NACA Report 835, from memory)', () => {
    const aspectRatio = 0.05;
    const delta = surfaceOf([
      flatPanel({ spanMm: (1000 * aspectRatio) / 4, rootChordMm: 1000, tipChordMm: 0, sweepMm: 1000 }),
    ]);
    const { clAlphaPerRad, neutralStationMm } = solved([delta], [grid(16, 16)]);
    expect(Math.abs(clAlphaPerRad / ((Math.PI * aspectRatio) / 2) - 1)).toBeLessThan(0.02);
    expect(Math.abs(neutralStationMm / 1000 - 2 / 3)).toBeLessThan(0.01);
  });

  test('a wing flown backwards has the same slope (reverse-flow theorem: Flax, J. Aeronaut. Sci. 19, 1952, from memory)', () => {
    const forwards = flatPanel({ spanMm: 600, rootChordMm: 250, tipChordMm: 100, sweepMm: 300 });
    const backwards = flatPanel({ ...forwards, sweepMm: -(300 + 100 - 250) });
    const [a, b] = [forwards, backwards].map(
      (panel) => solved([surfaceOf([panel])], [grid(6, 32)]).clAlphaPerRad,
    );
    expect(Math.abs((a ?? 0) / (b ?? 1) - 1)).toBeLessThan(0.001);
  });

  test('two half-wings far apart are two wings', () => {
    const whole = solved([rectangular(5)], [grid(3, 6, 'flush')]);
    // a right half that is itself a whole wing of the same lattice: 12 strips over 1000 mm
    const apart = solved(
      [surfaceOf([flatPanel({ spanMm: 1000 })], { rootMm: [0, 1e7, 0] })],
      [grid(3, 12, 'flush')],
    );
    expect(apart.clAlphaPerRad).toBeCloseTo(whole.clAlphaPerRad, 6);
    expect(apart.neutralStationMm).toBeCloseTo(whole.neutralStationMm, 5);
  });

  test('two equal wings far above each other lift twice as much, about the mean of their centres', () => {
    const low = rectangular(6);
    const high = rectangular(6, { id: 'high', rootMm: [300, 0, 1e7] });
    const one = solved([low], [grid(3, 12)]);
    const both = solved([low, high], [grid(3, 12), grid(3, 12)]);
    expect(both.clAlphaPerRad).toBeCloseTo(2 * one.clAlphaPerRad, 6);
    expect(both.neutralStationMm).toBeCloseTo(one.neutralStationMm + 150, 5);
  });

  test('no planar wing beats the ellipse: span efficiency at most 1', () => {
    for (const taper of [0, 0.4, 1]) {
      const wing = surfaceOf([flatPanel({ spanMm: 700, tipChordMm: 200 * taper, sweepMm: 60 })]);
      const { clAlphaPerRad, plan, lattice, perRadianMm } = solved([wing], [grid(3, 40)]);
      const drag = inducedDragAreaMm2(lattice, perRadianMm) / plan.areaMm2;
      expect(clAlphaPerRad ** 2 / (Math.PI * plan.aspectRatio * drag)).toBeLessThan(1.0005);
    }
  });

  test('incidence lifts at zero alpha as alpha does; washed-out tips lift less', () => {
    const inclined = solved([rectangular(6, { incidenceDeg: 2 })], [grid(3, 12)]);
    // linear theory: sin(incidence) over the slope's normal, cos(incidence)
    expect(inclined.clAtZero / inclined.clAlphaPerRad).toBeCloseTo(Math.tan((2 * Math.PI) / 180), 9);
    const washout = solved([surfaceOf([flatPanel({ spanMm: 600, tipTwistDeg: -3 })])], [grid(3, 12)]);
    expect(washout.clAtZero).toBeLessThan(0);
    expect(washout.clAtZero).toBeGreaterThan((-3 * Math.PI * washout.clAlphaPerRad) / 180);
  });

  test('the moment about the neutral point does not change with alpha', () => {
    const wing = surfaceOf([flatPanel({ sweepMm: 250, tipTwistDeg: -4 })]);
    const found = solved([wing], [grid(3, 12)]);
    const [flat, nosedUp] = [0, 0.1].map((alpha) =>
      momentCoefficient(found, found.plan, found.neutralStationMm, alpha),
    );
    expect(nosedUp).toBeCloseTo(flat ?? Number.NaN, 12);
    // washed-out, swept-back tips hold the nose up
    expect(flat).toBeGreaterThan(0.01);
  });
});

describe('invariance', () => {
  const panels = [
    flatPanel({ spanMm: 300, tipChordMm: 180, sweepMm: 30, dihedralDeg: 2 }),
    flatPanel({
      spanMm: 200,
      rootChordMm: 180,
      tipChordMm: 110,
      sweepMm: 60,
      dihedralDeg: 6,
      tipTwistDeg: -2,
    }),
  ];
  const wing = surfaceOf(panels, { rootMm: [100, 0, 10] });
  const tail = surfaceOf([flatPanel({ spanMm: 180, rootChordMm: 110, tipChordMm: 80, sweepMm: 20 })], {
    id: 'tail',
    rootMm: [700, 0, 60],
    cantDeg: 35,
  });
  const grids: Grid[] = [{ rows: 3, strips: 10, tip: 'inset' }, grid(2, 5)];
  const base = solved([wing, tail], grids);

  test('order of the surfaces', () => {
    const turned = solved([tail, wing], [...grids].reverse(), wing);
    expect(turned.neutralStationMm).toBeCloseTo(base.neutralStationMm, 8);
    expect(turned.clAlphaPerRad).toBeCloseTo(base.clAlphaPerRad, 10);
  });

  test('datum and waterline', () => {
    const moved = [wing, tail].map((s) => ({
      ...s,
      rootMm: [s.rootMm[0] - 5000, s.rootMm[1], s.rootMm[2] + 300] as const,
    }));
    expect(solved(moved, grids).neutralStationMm).toBeCloseTo(base.neutralStationMm - 5000, 7);
  });

  test('scale', () => {
    const bigger = [wing, tail].map((s) => ({
      ...s,
      rootMm: [s.rootMm[0] * 7, s.rootMm[1] * 7, s.rootMm[2] * 7] as const,
      panels: s.panels.map((p) => ({
        ...p,
        spanMm: p.spanMm * 7,
        rootChordMm: p.rootChordMm * 7,
        tipChordMm: p.tipChordMm * 7,
        sweepMm: p.sweepMm * 7,
      })),
    }));
    const found = solved(bigger, grids);
    expect(found.neutralStationMm / 7).toBeCloseTo(base.neutralStationMm, 8);
    expect(found.clAlphaPerRad).toBeCloseTo(base.clAlphaPerRad, 10);
  });

  test('upside down: dihedral, cant and twist the other way', () => {
    const turned = [wing, tail].map((s) => ({
      ...s,
      rootMm: [s.rootMm[0], s.rootMm[1], -s.rootMm[2]] as const,
      cantDeg: -s.cantDeg,
      panels: s.panels.map((p) => ({ ...p, dihedralDeg: -p.dihedralDeg, tipTwistDeg: -p.tipTwistDeg })),
    }));
    expect(solved(turned, grids).neutralStationMm).toBeCloseTo(base.neutralStationMm, 8);
  });

  test('cutting a panel in two along a strip edge', () => {
    const whole = solved([rectangular(5)], [grid(3, 10, 'flush')]);
    const cut = solved(
      [surfaceOf([flatPanel({ spanMm: 200 }), flatPanel({ spanMm: 300 })])],
      [{ rows: 3, strips: 10, tip: 'flush' }],
    );
    expect(cut.neutralStationMm).toBeCloseTo(whole.neutralStationMm, 9);
    expect(cut.clAlphaPerRad).toBeCloseTo(whole.clAlphaPerRad, 10);
  });

  test('loading adds up to the lift', () => {
    const flat = rectangular(6);
    const found = solved([flat], [grid(3, 12, 'flush')]);
    const strips = spanLoading(found, ['wing'], found.plan.meanChordMm);
    const mean = strips.reduce((sum, strip) => sum + strip.loadPerRad, 0) / strips.length;
    expect(mean).toBeCloseTo(found.clAlphaPerRad, 10);
    strips.forEach((strip, k) => {
      expect(strip.buttlineMm).toBeCloseTo(25 + 50 * k, 9);
    });
  });
});

describe('strips do not care where panels end', () => {
  test.each([2, 4, 8])(
    'aspect ratio %i cut into panels of 3 and 97 %% of the half: the very same slope',
    (ar) => {
      const whole = solved([rectangular(ar)], [grid(6, 24, 'cosine')]);
      const [inner, outer] = [3 * ar, 97 * ar];
      const cut = solved(
        [surfaceOf([flatPanel({ spanMm: inner }), flatPanel({ spanMm: outer })])],
        [grid(6, 24, 'cosine')],
      );
      expect(cut.clAlphaPerRad).toBeCloseTo(whole.clAlphaPerRad, 10);
      expect(cut.neutralStationMm).toBeCloseTo(whole.neutralStationMm, 8);
    },
  );

  test('neighbouring strips differ little in width, whatever the panels: by less than the first-order error they would make', () => {
    const spans = [5, 400, 12, 300, 3];
    const { lattice } = solved(
      [surfaceOf(spans.map((spanMm) => flatPanel({ spanMm })))],
      [grid(1, 24, 'cosine')],
    );
    const widths = Array.from(
      { length: 24 },
      (_, k) => (lattice.nodes[3 * k + 4] as number) - (lattice.nodes[3 * k + 1] as number),
    );
    // sin((k + 1)h) − sin(kh) falls towards the tip by at most half of the last but one width at a time
    widths.slice(1, -1).forEach((width, k) => {
      expect(width / (widths[k] as number)).toBeGreaterThan(0.59);
      expect(width / (widths[k] as number)).toBeLessThan(1);
    });
  });
});

describe('convergence', () => {
  const slopes = (tip: Grid['tip']) =>
    [1, 2, 4].map((k) => solved([rectangular(4)], [grid(2 * k, 6 * k, tip)]).clAlphaPerRad);
  const order = ([coarse = 0, middle = 0, fine = 0]: number[]) =>
    Math.log2(Math.abs((coarse - middle) / (middle - fine)));

  test('with tip inset or cosine strips nearly second order, flush tips first order', () => {
    expect(order(slopes('inset'))).toBeGreaterThan(1.6);
    expect(order(slopes('cosine'))).toBeGreaterThan(1.6);
    expect(order(slopes('flush'))).toBeLessThan(1.3);
  });

  test('inset and cosine strips agree', () => {
    const [, , inset = 0] = slopes('inset');
    const [, , cosine = 1] = slopes('cosine');
    expect(Math.abs(inset / cosine - 1)).toBeLessThan(0.001);
  });
});

test('wrong grids and surfaces are refused', () => {
  const wing = rectangular(5);
  expect(() => latticeOf([wing], [])).toThrow(/a grid for each chain/);
  expect(() => latticeOf([wing], [grid(0, 4)])).toThrow(/whole numbers/);
  expect(() => latticeOf([{ ...wing, rootMm: [0, -5, 0] }], [grid(2, 4)])).toThrow(/left of the plane/);
});
