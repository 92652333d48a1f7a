import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pointFromAircraft } from '../../../src/engine/geometry/rotation';
import type { Vec3 } from '../../../src/engine/geometry/types';
import { dot, mirrorY } from '../../../src/engine/geometry/vec3';
import { liquidState, pointFromShape, tankVolumeMl } from '../../../src/engine/liquid/liquidState';
import type { Tank } from '../../../src/engine/liquid/types';
import { surfaceOutline } from '../../../src/engine/liquid/wettedMesh';
import { between } from '../../between';
import { anyDown, anyFill, TANK_NAMES, TANKS } from './tankShapes';

const tank = (name: string, rest: Partial<Tank> = {}): Tank => ({
  id: name,
  name,
  shape: TANKS[name]!,
  pose: { positionMm: [400, -60, 25], yawDeg: 20, pitchDeg: -8, rollDeg: 35 },
  mirrored: false,
  densityGPerMl: 0.8,
  startMl: 0,
  unusableMl: 0,
  feeds: 'outlet',
  rank: 0,
  share: 'volume',
  ...rest,
});

const LEVEL: Vec3 = [0, 0, -1];
const angle = between(-180, 180);

test('a known case: half a litre of water in a level box', () => {
  const box = tank('box', {
    shape: { kind: 'box', lengthMm: 100, widthMm: 100, heightMm: 100 },
    pose: { positionMm: [600, 0, 40], yawDeg: 0, pitchDeg: 0, rollDeg: 0 },
    densityGPerMl: 1,
  });
  const { mass, surface, volumeMl } = liquidState(box, 500, LEVEL);
  expect(volumeMl).toBe(500);
  expect(mass.massG).toBe(500);
  [600, 0, 15].forEach((v, i) => {
    expect(mass.cgMm![i]!).toBeCloseTo(v, 12);
  });
  // m(b² + c²)/12.
  expect(mass.inertiaAboutCgGmm2.xx).toBeCloseTo((500 * (100 ** 2 + 50 ** 2)) / 12, 6);
  expect(mass.inertiaAboutCgGmm2.zz).toBeCloseTo((500 * 2 * 100 ** 2) / 12, 6);
  expect(surface).toEqual({ down: LEVEL, offsetMm: -40 });
});

describe.each(TANK_NAMES)('%s', (name) => {
  test('mass is volume by density, and a mirrored aircraft has a mirrored state', () => {
    fc.assert(
      fc.property(anyFill, anyDown, angle, angle, angle, (share, down, yawDeg, pitchDeg, rollDeg) => {
        const right = tank(name, { pose: { positionMm: [300, 80, 10], yawDeg, pitchDeg, rollDeg } });
        const left: Tank = {
          ...right,
          mirrored: true,
          pose: { positionMm: [300, -80, 10], yawDeg: -yawDeg, pitchDeg, rollDeg: -rollDeg },
        };
        const volumeMl = share * tankVolumeMl(right);
        const a = liquidState(right, volumeMl, down);
        const b = liquidState(left, volumeMl, mirrorY(down));
        expect(a.mass.massG).toBe(volumeMl * 0.8);
        mirrorY(a.mass.cgMm!).forEach((v, i) => {
          expect(Math.abs(v - b.mass.cgMm![i]!)).toBeLessThan(1e-7);
        });
        const [s, t] = [a.mass.inertiaAboutCgGmm2, b.mass.inertiaAboutCgGmm2];
        const close = (x: number, y: number) =>
          expect(Math.abs(x - y)).toBeLessThan(1e-6 * (s.xx + s.yy + s.zz) + 1e-9);
        close(s.xx, t.xx);
        close(s.yy, t.yy);
        close(s.zz, t.zz);
        close(s.xy, -t.xy);
        close(s.xz, t.xz);
        close(s.yz, -t.yz);
        expect(Math.abs(a.surface!.offsetMm - b.surface!.offsetMm)).toBeLessThan(1e-7);
      }),
      { numRuns: 25 },
    );
  });

  test('the surface it gives is where the shape’s own surface lies', () => {
    const posed = tank(name, { mirrored: true });
    const down: Vec3 = [0.36, 0.48, -0.8];
    const { surface } = liquidState(posed, 0.4 * tankVolumeMl(posed), down);
    const turned = pointFromAircraft({ ...posed.pose, positionMm: [0, 0, 0] }, down);
    const own = mirrorY(turned);
    const offset = surface!.offsetMm - dot(down, posed.pose.positionMm);
    const outline = surfaceOutline(posed.shape, own, offset);
    expect(outline.length).toBeGreaterThan(0);
    for (const point of outline.flat()) {
      expect(Math.abs(dot(down, pointFromShape(posed, point)) - surface!.offsetMm)).toBeLessThan(1e-9);
    }
  });
});

test('moving a tank moves its liquid and nothing else', () => {
  const here = tank('fuselage');
  const there: Tank = { ...here, pose: { ...here.pose, positionMm: [1400, -60, 25] } };
  const a = liquidState(here, 50, LEVEL);
  const b = liquidState(there, 50, LEVEL);
  expect(b.mass.cgMm![0] - a.mass.cgMm![0]).toBeCloseTo(1000, 9);
  expect(b.mass.inertiaAboutCgGmm2).toEqual(a.mass.inertiaAboutCgGmm2);
  expect(b.surface!.offsetMm).toBe(a.surface!.offsetMm);
});

test('what is remembered never changes an answer', () => {
  // More states than are kept, asked for twice in different orders, against tanks that remember nothing.
  const kept = tank('roundedBox');
  const volumes = Array.from({ length: 200 }, (_, i) => ((i * 37) % 200) + 1);
  for (const list of [volumes, volumes.toReversed(), volumes]) {
    for (const volumeMl of list) {
      const fresh = tank('roundedBox', { shape: { ...TANKS.roundedBox! } });
      expect(liquidState(kept, volumeMl, LEVEL)).toEqual(liquidState(fresh, volumeMl, LEVEL));
    }
  }
});

test('an empty tank has no CG', () => {
  const { mass, surface } = liquidState(tank('box'), 0, LEVEL);
  expect(mass.massG).toBe(0);
  expect(mass.cgMm).toBeNull();
  expect(surface).toBeNull();
});
