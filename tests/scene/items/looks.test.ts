import { describe, expect, test } from 'vitest';
import type { Shape } from '../../../src/engine/mass/shapes';
import type { Role } from '../../../src/model/document/types';
import { lookOf } from '../../../src/scene/items/looks/lookOf';
import type { Drawing } from '../../../src/scene/items/looks/pen';

const ROLES: readonly Role[] = [
  'energy',
  'radio',
  'control',
  'powerplant',
  'payload',
  'undercarriage',
  'ballast',
  'other',
];
/** Long and flat, upright, a cube, a sliver, a brick. */
const SIZES = [
  [146, 46, 36],
  [36, 18, 36],
  [40, 40, 40],
  [90, 6, 3],
  [12, 60, 30],
] as const;

const box = ([lengthMm, widthMm, heightMm]: readonly [number, number, number]): Shape => ({
  kind: 'box',
  lengthMm,
  widthMm,
  heightMm,
});

const look = (role: Role, shape: Shape, pitchDeg = 0): Drawing => {
  const drawing = lookOf({ role, shape, pitchDeg, aircraft: 'petrol' });
  if (!drawing) throw new Error('no look');
  return drawing;
};

const corners = ({ positions }: Drawing): (readonly [number, number, number])[] =>
  Array.from({ length: positions.length / 3 }, (_, i) => [
    positions[3 * i]!,
    positions[3 * i + 1]!,
    positions[3 * i + 2]!,
  ]);

/** Six times the volume within closed facets that face outwards, by the divergence theorem. */
const sixVolumes = (drawing: Drawing): number => {
  const all = corners(drawing);
  let sum = 0;
  for (let i = 0; i < all.length; i += 3) {
    const [[ax, ay, az], [bx, by, bz], [cx, cy, cz]] = [all[i]!, all[i + 1]!, all[i + 2]!];
    sum += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return sum;
};

describe.each(ROLES)('a box that is %s', (role) => {
  test.each(SIZES)('of %i × %i × %i mm is drawn within itself and fills it', (...size) => {
    const drawing = look(role, box(size));
    for (const axis of [0, 1, 2] as const) {
      const along = corners(drawing).map((corner) => corner[axis]);
      expect(Math.max(...along)).toBeLessThanOrEqual(size[axis] / 2 + 1e-6);
      expect(Math.min(...along)).toBeGreaterThanOrEqual(-size[axis] / 2 - 1e-6);
      expect(Math.max(...along) - Math.min(...along)).toBeGreaterThan(0.9 * size[axis]);
    }
    // Right way out: bodies that lie in one another count twice, so only the sign is told.
    expect(sixVolumes(drawing)).toBeGreaterThan(0);
    expect(drawing.positions.every(Number.isFinite)).toBe(true);
    expect(drawing.normals.every(Number.isFinite)).toBe(true);
    expect(drawing.stuffs.length * 3).toBe(drawing.positions.length);
  });
});

describe('what turns', () => {
  test.each([
    ['a jet', 252, 106, 0],
    ['a cylinder of an engine', 84, 60, 90],
    ['a crankcase', 78, 80, 0],
    ['a pump', 74, 30, 0],
  ])('%s keeps within its circle', (_name, lengthMm, diameterMm, pitchDeg) => {
    const drawing = look('powerplant', { kind: 'cylinder', lengthMm, diameterMm }, pitchDeg);
    for (const [x, y, z] of corners(drawing)) {
      expect(Math.abs(x)).toBeLessThanOrEqual(lengthMm / 2 + 1e-6);
      expect(Math.hypot(y, z)).toBeLessThanOrEqual(diameterMm / 2 + 1e-6);
    }
    expect(sixVolumes(drawing)).toBeGreaterThan(0);
  });

  test('a propeller keeps within its thickness and its disc', () => {
    const shape: Shape = { kind: 'ellipsoid', lengthMm: 14, widthMm: 457, heightMm: 40 };
    for (const [x, y, z] of corners(look('powerplant', shape))) {
      expect(Math.abs(x)).toBeLessThanOrEqual(7.01);
      expect(Math.abs(y)).toBeLessThanOrEqual(228.51);
      expect(Math.abs(z)).toBeLessThanOrEqual(20.01);
    }
  });

  test('the plug of an upright cylinder is at its top, whichever end was turned up', () => {
    const shape: Shape = { kind: 'cylinder', lengthMm: 84, diameterMm: 60 };
    // The nose end of a part is −x: turned nose up that end is the top, nose down the other.
    const slimEnd = (pitchDeg: number) => {
      const all = corners(look('powerplant', shape, pitchDeg));
      const widest = (sign: 1 | -1) =>
        Math.max(...all.filter(([x]) => sign * x > 38).map(([, y, z]) => Math.hypot(y, z)));
      return widest(-1) < widest(1) ? 'nose' : 'tail';
    };
    expect(slimEnd(90)).toBe('nose');
    expect(slimEnd(-90)).toBe('tail');
  });
});

test('a shape that says it best itself has no look', () => {
  expect(
    lookOf({ role: 'energy', shape: { kind: 'sphere', diameterMm: 20 }, pitchDeg: 0, aircraft: 'petrol' }),
  ).toBeNull();
});
