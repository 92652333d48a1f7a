import { describe, expect, test } from 'vitest';
import { wallPath } from '../../../src/engine/fit/wallPath';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { distance } from '../../../src/engine/geometry/vec3';
import { bodies } from '../../../src/model/airframe/bodies';
import { leadMass, leadState } from '../../../src/model/airframe/leads';
import { hulls } from '../../../src/model/airframe/solids';
import type { Fuselage, Lead } from '../../../src/model/document/types';
import { aircraftFaults } from '../../../src/model/reading/faults';
import { benchOf, box, partAt, squareHull } from './fitAircraft';

/** Round, inner radius 58; in three sections. */
const tube: Fuselage = {
  ...squareHull,
  sections: [0, 250, 600].map((stationMm) => ({ ...squareHull.sections[0]!, stationMm, roundness: 1 })),
};
const R = 58;
const L = 400;

const lead: Lead = {
  id: 'lead',
  name: 'Lead',
  from: 'a',
  to: 'b',
  massGPerM: 50,
  route: 'wall',
  waypointsMm: [],
};

function run(hull: Fuselage | readonly Fuselage[], from: Vec3, to: Vec3, over: Partial<Lead> = {}) {
  const parts = [partAt('a', box(10, 10, 10), from), partAt('b', box(10, 10, 10), to)];
  const own = { ...lead, ...over };
  const aircraft = benchOf([hull].flat(), parts, { leads: [own] });
  return { aircraft, own, state: leadState(aircraft, own)! };
}

const lengthOf = (path: readonly Vec3[]): number =>
  path.slice(1).reduce((sum, point, i) => sum + distance(path[i]!, point), 0);

describe('in a straight round tube', () => {
  test('two ends on the axis: out, along, back in', () => {
    const { state, aircraft } = run(tube, [100, 0, 0], [100 + L, 0, 0]);
    expect(state.neededMm).toBeCloseTo(R + L + R, 6);
    expect(state.massG).toBeCloseTo((50 * (R + L + R)) / 1000, 6);
    expect(state.strays).toBeNull();
    expect(aircraftFaults(aircraft)).toEqual([]);
  });

  test('off the axis each end goes out along its own radius', () => {
    const { state } = run(tube, [100, 18, 24], [100 + L, 24, 32]);
    expect(state.neededMm).toBeCloseTo(R - 30 + L + (R - 40), 6);
    const [, foot] = state.pathMm;
    expect(foot![0]).toBeCloseTo(100, 9);
    expect(foot![1]).toBeCloseTo(R * 0.6, 6);
    expect(foot![2]).toBeCloseTo(R * 0.8, 6);
  });

  test('from wall to opposite wall it is a helix, from below', () => {
    const helix = Math.hypot(L, Math.PI * R);
    const ends: [Vec3, Vec3] = [
      [100, R, 0],
      [100 + L, -R, 0],
    ];
    const { state, aircraft } = run(tube, ...ends);
    const hull = hulls(aircraft)[0]!;
    const short = [40, 20, 10, 5, 2.5].map(
      (stepDeg) => helix - lengthOf(wallPath(hull, ...ends, { stepDeg, stepMm: 1000 })!),
    );
    short.slice(1).forEach((now, i) => {
      expect(now).toBeGreaterThan(0);
      expect(now).toBeLessThan(short[i]! / 3);
    });
    // Chords of 5° are short by a share of at most δ²/24.
    expect(helix - state.neededMm).toBeGreaterThan(0);
    expect(helix - state.neededMm).toBeLessThan((helix * (Math.PI / 36) ** 2) / 24);
  });

  test('within one section it is an arc', () => {
    const { state } = run(tube, [300, R, 0], [300, 0, -R]);
    expect(state.neededMm).toBeLessThan((Math.PI / 2) * R);
    expect(state.neededMm).toBeCloseTo(2 * 18 * R * Math.sin(Math.PI / 4 / 18), 6);
  });

  test('its mass lies along the way', () => {
    const { state } = run(tube, [100, 10, 0], [100 + L, 10, 0]);
    const out = R - 10;
    expect(leadMass(state).cgMm![0]).toBeCloseTo(100 + L / 2, 6);
    expect(leadMass(state).cgMm![1]).toBeCloseTo((2 * out * (10 + R) + 2 * L * R) / 2 / (2 * out + L), 6);
  });
});

test('in a box section along one wall: down, along the floor, up', () => {
  const { state } = run(squareHull, [100, 10, -40], [500, 10, -30]);
  expect(state.neededMm).toBeCloseTo(18 + 400 + 28, 6);
});

test('along a flaring cone it keeps to the wall, through the hull’s own sections', () => {
  const size = (stationMm: number, mm: number) => ({
    stationMm,
    widthMm: mm,
    heightMm: mm,
    waterlineMm: 0,
    roundness: 1,
  });
  const cone: Fuselage = { ...squareHull, sections: [size(0, 64), size(300, 124), size(600, 64)] };
  // Inner radius 30 at the ends, 60 in the middle; ends where it is 40.
  const { state } = run(cone, [100, 0, -5], [500, 0, -5]);
  expect(state.neededMm).toBeCloseTo(2 * 35 + 2 * Math.hypot(200, 20), 6);
});

test('in an elliptic section the leg to the wall is normal to the wall', () => {
  const oval: Fuselage = {
    ...squareHull,
    skinMm: 0,
    sections: [0, 600].map((stationMm) => ({
      ...squareHull.sections[0]!,
      stationMm,
      widthMm: 160,
      heightMm: 100,
      roundness: 1,
    })),
  };
  const [end, foot] = run(oval, [100, 30, 20], [500, 0, 0]).state.pathMm as [Vec3, Vec3];
  expect((foot[1] / 80) ** 2 + (foot[2] / 50) ** 2).toBeCloseTo(1, 9);
  const normal = [foot[1] / 80 ** 2, foot[2] / 50 ** 2] as const;
  const [y, z] = [foot[1] - end[1], foot[2] - end[2]];
  expect((y * normal[1] - z * normal[0]) / Math.hypot(y, z) / Math.hypot(...normal)).toBeCloseTo(0, 6);
});

test('waypoints come between the feet as straight legs', () => {
  const { state } = run(squareHull, [100, 0, -48], [500, 0, -48], { waypointsMm: [[300, 0, 0]] });
  expect(state.neededMm).toBeCloseTo(10 + 2 * Math.hypot(200, 58) + 10, 6);
});

describe('without a wall to follow it runs straight and says so', () => {
  test('an end outside', () => {
    const { state } = run(tube, [-300, 0, 0], [100, 0, 0]);
    expect(state.neededMm).toBeCloseTo(400, 9);
    expect(state.sentence).toBe('Lead needs 400 mm. It runs straight: an end lies outside every hull.');
  });

  test('ends in different hulls', () => {
    const pod: Fuselage = { ...squareHull, id: 'pod', buttlineMm: 300 };
    const { state } = run([tube, pod], [100, 0, 0], [100, 300, 0]);
    expect(state.neededMm).toBeCloseTo(300, 9);
    expect(state.strays).toBe('It runs straight: its ends lie in different hulls.');
  });

  test('a route left out, or straight, is straight without a word', () => {
    const { aircraft, own } = run(tube, [100, 0, 0], [500, 0, 0]);
    const { route: _, ...bare } = own;
    for (const plain of [bare, { ...bare, route: 'straight' as const }]) {
      expect(leadState(aircraft, plain)).toMatchObject({ neededMm: 400, strays: null });
    }
  });
});

test('the body in the sum follows the hull when its wall moves', () => {
  const { aircraft } = run(tube, [100, 0, 0], [500, 0, 0]);
  const wide = {
    ...tube,
    sections: tube.sections.map((section) => ({ ...section, widthMm: 140, heightMm: 140 })),
  };
  const massG = (now: typeof aircraft) => bodies(now).find(({ id }) => id === 'lead')!.mass.massG;
  expect(massG(aircraft)).toBeCloseTo(0.05 * (400 + 2 * 58), 6);
  expect(massG({ ...aircraft, structure: [wide] })).toBeCloseTo(0.05 * (400 + 2 * 68), 6);
});
