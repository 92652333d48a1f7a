import { describe, expect, test } from 'vitest';
import { meshProperties, meshSurface } from '../../../src/engine/mass/mesh';
import type { Mesh } from '../../../src/engine/mass/types';
import { soundMesh } from '../../../src/engine/mesh/soundMesh';
import { randomFrom } from '../../randomFrom';
import { seed } from '../../seed';
import { ball, brick, drum, insideOut, loose, moved, torus } from './solids';

const MOST = 100_000;
const read = (...meshes: readonly Mesh[]) => soundMesh(meshes.flatMap(loose), MOST);

function sound(...meshes: readonly Mesh[]) {
  const verdict = read(...meshes);
  if (!verdict.ok) throw new Error(verdict.sentence);
  return verdict;
}
const volume = (mesh: Mesh) => meshProperties(mesh).volumeMm3;

describe('known solids against their closed forms', () => {
  test('a brick: 30 × 20 × 10 mm', () => {
    const { mesh, findings } = sound(brick([5, -10, 3], [35, 10, 13]));
    const { volumeMm3, centroidMm, inertiaAboutCentroidMm5 } = meshProperties(mesh);
    expect(volumeMm3).toBeCloseTo(6000, 9);
    expect(centroidMm).toEqual([20, 0, 8]);
    // V(b² + c²)/12 and the area 2(ab + bc + ca).
    expect(inertiaAboutCentroidMm5.xx).toBeCloseTo((6000 * (400 + 100)) / 12, 6);
    expect(inertiaAboutCentroidMm5.yy).toBeCloseTo((6000 * (900 + 100)) / 12, 6);
    expect(meshSurface(mesh).areaMm2).toBeCloseTo(2 * (600 + 200 + 300), 9);
    expect(findings).toMatchObject({ shells: 1, hollows: 0, turned: 0, cuts: 0 });
  });

  // An inscribed mesh misses a share that falls as the square of the step: halving the step quarters it.
  test.each([
    ['a ball', (n: number) => ball(40, n, 2 * n), (4 / 3) * Math.PI * 40 ** 3],
    ['a drum', (n: number) => drum(90, 25, 4 * n), Math.PI * 25 ** 2 * 90],
    ['a ring', (n: number) => torus(60, 18, 4 * n, 2 * n), 2 * Math.PI ** 2 * 60 * 18 ** 2],
  ])('%s comes to its closed form as its facets get finer', (_name, made, exact) => {
    const missed = [8, 16].map((n) => 1 - volume(sound(made(n)).mesh) / exact);
    expect(missed[0]).toBeLessThan(0.1);
    expect(missed[1]! / missed[0]!).toBeGreaterThan(0.24);
    expect(missed[1]! / missed[0]!).toBeLessThan(0.27);
  });
});

describe('what is put right, and told', () => {
  test('triangles that run the wrong way round', () => {
    const mesh = brick([0, 0, 0], [1, 2, 3]);
    const spoilt = { ...mesh, triangles: mesh.triangles.map((t, i) => (i % 3 === 0 ? flip(t) : t)) };
    const { mesh: mended, findings } = sound(spoilt);
    expect(findings.turned).toBe(4);
    expect(volume(mended)).toBeCloseTo(6, 12);
  });

  test('a mesh that is inside out is turned, all of it', () => {
    const { mesh, findings } = sound(insideOut(brick([0, 0, 0], [1, 2, 3])));
    expect(findings.turned).toBe(12);
    expect(volume(mesh)).toBeCloseTo(6, 12);
  });

  test('a shell in another is a hollow, whichever way it was drawn', () => {
    const inner = brick([1, 1, 1], [3, 3, 3]);
    for (const core of [inner, insideOut(inner)]) {
      const { mesh, findings } = sound(brick([0, 0, 0], [4, 4, 4]), core);
      expect(findings).toMatchObject({ shells: 2, hollows: 1 });
      expect(volume(mesh)).toBeCloseTo(64 - 8, 9);
    }
  });

  test('two shells that touch along an edge, at a corner or with a face are two solids', () => {
    const first = brick([0, 0, 0], [1, 1, 1]);
    for (const by of [
      [1, 1, 0],
      [1, 1, 1],
      [1, 0.5, 0.5],
    ] as const) {
      const { mesh, findings } = sound(first, moved(first, by));
      expect(findings).toMatchObject({ shells: 2, hollows: 0, cuts: 0 });
      expect(volume(mesh)).toBeCloseTo(2, 9);
    }
  });

  // Volumes of bricks by hand; each triangle of the second shell comes first once.
  test.each([
    ['a face laid on the outside is a second solid', [10, 5, 10], [15, 15, 20], 6500, 0],
    ['a face laid on the inside is a hollow', [0, 5, 10], [5, 15, 20], 5500, 1],
    ['one that sticks out of the other counts twice, as is told', [8, 5, 10], [13, 15, 20], 6500, 0],
  ] as const)('%s, whichever triangle comes first', (_name, from, to, volumeMm3, hollows) => {
    const other = brick(from, to);
    for (const core of [other, insideOut(other)])
      for (let first = 0; first < other.triangles.length; first += 1) {
        const triangles = [...core.triangles.slice(first), ...core.triangles.slice(0, first)];
        const { mesh, findings } = sound(brick([0, 0, 0], [10, 20, 30]), { ...core, triangles });
        expect(findings).toMatchObject({ shells: 2, hollows });
        expect(volume(mesh)).toBeCloseTo(volumeMm3, 6);
      }
  });

  test('corners that differ in their last digit only, as after single precision, hang together', () => {
    const random = randomFrom(seed);
    const figures = loose(ball(50, 20, 40)).map((mm) => mm + (random() - 0.5) * 1e-4);
    const verdict = soundMesh(figures, MOST);
    if (!verdict.ok) throw new Error(verdict.sentence);
    const exact = volume(ball(50, 20, 40));
    expect(verdict.mesh.verticesMm).toHaveLength(2 + 19 * 40);
    expect(volume(verdict.mesh) / exact).toBeCloseTo(1, 4);
  });

  test('triangles of no size and triangles that are there twice are left out', () => {
    const figures = loose(brick([0, 0, 0], [1, 2, 3]));
    const verdict = soundMesh([...figures, ...figures.slice(0, 9), 0, 0, 0, 0, 0, 0, 1, 2, 3], MOST);
    expect(verdict).toMatchObject({ ok: true, findings: { doubled: 1, shrunk: 1 } });
  });

  test('shells that cut each other are taken, and where is told', () => {
    const { findings } = sound(brick([0, 0, 0], [4, 4, 4]), brick([2, 1, 1], [6, 3, 3]));
    expect(findings.cuts).toBeGreaterThan(0);
    // The second brick goes into the first through its face x = 4.
    for (const [x, y, z] of findings.cutsAtMm) {
      expect(x).toBeCloseTo(4, 9);
      expect(Math.max(Math.abs(y - 2), Math.abs(z - 2))).toBeCloseTo(1, 9);
    }
  });
});

describe('what is refused, and where', () => {
  test('a hole, with its rim as a closed line', () => {
    const mesh = torus(60, 18, 24, 12);
    const verdict = soundMesh(loose(mesh).slice(9), MOST);
    if (verdict.ok) throw new Error('It has a hole.');
    expect(verdict.sentence).toContain('a hole, 3 edges');
    const [rim, ...others] = verdict.atMm;
    expect(others).toEqual([]);
    expect(rim).toHaveLength(4);
    expect(rim![0]).toEqual(rim![3]);
    const lost = mesh.triangles[0]!.map((i) => mesh.verticesMm[i]!);
    for (const corner of rim!)
      expect(lost.some((p) => Math.hypot(...p.map((mm, k) => mm - corner[k]!)) < 2e-3)).toBe(true);
  });

  test('two holes are two rims', () => {
    const figures = loose(drum(90, 25, 12));
    // The fans of both ends begin with every fourth triangle, front and rear.
    const walls = figures.filter((_, i) => Math.floor(i / 9) % 4 >= 2);
    const verdict = soundMesh(walls, MOST);
    expect(verdict).toMatchObject({ ok: false });
    if (!verdict.ok) expect(verdict.atMm.map((line) => line.length)).toEqual([13, 13]);
  });

  test('a band with one side', () => {
    expect(read(klein(24, 12))).toMatchObject({ ok: false, sentence: expect.stringContaining('one side') });
  });

  test('a wall inside a solid, on three of its edges', () => {
    const figures = loose(brick([0, 0, 0], [2, 2, 2]));
    const wall = [0, 0, 0, 2, 2, 0, 2, 2, 2, 0, 0, 0, 2, 2, 2, 0, 0, 2];
    expect(soundMesh([...figures, ...wall], MOST)).toMatchObject({ ok: false });
  });

  test('no triangle, too few, too many, no number, no volume', () => {
    expect(soundMesh([], MOST)).toMatchObject({ ok: false, sentence: 'There is no triangle in it.' });
    expect(soundMesh(loose(brick([0, 0, 0], [1, 1, 1])), 11)).toMatchObject({
      ok: false,
      sentence: expect.stringContaining('12 triangles; at most 11'),
    });
    const figures = loose(brick([0, 0, 0], [1, 1, 1]));
    figures[20] = Number.NaN;
    expect(soundMesh(figures, MOST)).toMatchObject({
      ok: false,
      sentence: 'Triangle 3 has a corner that is no number: NaN.',
    });
    expect(read(brick([0, 0, 0], [1, 1, 1e-5]))).toMatchObject({ ok: false });
  });
});

const flip = ([a, b, c]: readonly [number, number, number]) => [a, c, b] as const;

/** A grid that closes on itself turned over: Klein's bottle, which crosses itself and has no inside. */
function klein(u: number, v: number): Mesh {
  const at = (i: number, j: number) => {
    const [over, row] = [i >= u, i % u];
    return row * v + (over ? (v - (j % v)) % v : j % v);
  };
  const verticesMm = Array.from({ length: u * v }, (_, n) => {
    const [a, b] = [(2 * Math.PI * Math.floor(n / v)) / u, (2 * Math.PI * (n % v)) / v];
    const r = 30 + 8 * Math.cos(a / 2) * Math.sin(b) - 8 * Math.sin(a / 2) * Math.sin(2 * b);
    const z = 8 * Math.sin(a / 2) * Math.sin(b) + 8 * Math.cos(a / 2) * Math.sin(2 * b);
    return [r * Math.cos(a), r * Math.sin(a), z + 0.01 * b] as const;
  });
  const triangles = Array.from({ length: u * v }, (_, n) => {
    const [i, j] = [Math.floor(n / v), n % v];
    return [
      [at(i, j), at(i + 1, j), at(i + 1, j + 1)] as const,
      [at(i, j), at(i + 1, j + 1), at(i, j + 1)] as const,
    ];
  }).flat();
  return { verticesMm, triangles };
}
