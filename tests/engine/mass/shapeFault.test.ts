import { describe, expect, test } from 'vitest';
import { shapeFault } from '../../../src/engine/mass/shapeFault';
import type { LoftSection, PanelShape, Shape } from '../../../src/engine/mass/shapes';
import { tessellate } from '../../../src/engine/mass/tessellate';
import type { Mesh } from '../../../src/engine/mass/types';
import { nameOf, sampleShapes, wing } from './sampleShapes';

const box: Shape = { kind: 'box', lengthMm: 3, widthMm: 4, heightMm: 5 };
const ring: LoftSection = { xMm: 0, widthMm: 5, heightMm: 5, centreYMm: 0, centreZMm: 0, roundness: 1 };
const loft = (...sections: LoftSection[]): Shape => ({ kind: 'loft', sections });
const tube = (outerDiameterMm: number, innerDiameterMm: number): Shape => ({
  kind: 'tube',
  lengthMm: 10,
  outerDiameterMm,
  innerDiameterMm,
});
const prism = (...outlineMm: (readonly [number, number])[]): Shape => ({
  kind: 'prism',
  lengthMm: 10,
  outlineMm,
});
const panel = (change: Partial<PanelShape>): Shape => ({ ...wing, ...change });

test.each(sampleShapes.map((shape) => [nameOf(shape), shape] as const))('%s is sound', (_, shape) => {
  expect(shapeFault(shape)).toBeNull();
  expect(shapeFault({ kind: 'mesh', ...tessellate(shape, { segments: 16 }) })).toBeNull();
});

test.each<[string, Shape]>([
  ["The box's length must be more than 0 mm; it is 0.", { ...box, lengthMm: 0 }],
  ["The box's width must be more than 0 mm; it is -4.", { ...box, widthMm: -4 }],
  ["The box's height must be more than 0 mm; it is NaN.", { ...box, heightMm: Number.NaN }],
  [
    "The box's length must be more than 0 mm; it is Infinity.",
    { ...box, lengthMm: Number.POSITIVE_INFINITY },
  ],
  ["The sphere's diameter must be more than 0 mm; it is 0.", { kind: 'sphere', diameterMm: 0 }],
  [
    "The ellipsoid's height must be more than 0 mm; it is -1.",
    { kind: 'ellipsoid', lengthMm: 1, widthMm: 1, heightMm: -1 },
  ],
  [
    "The cylinder's diameter must be more than 0 mm; it is 0.",
    { kind: 'cylinder', lengthMm: 1, diameterMm: 0 },
  ],
  [
    "The tapered box's front and rear width cannot both be 0.",
    { kind: 'taperedBox', lengthMm: 9, frontWidthMm: 0, frontHeightMm: 1, rearWidthMm: 0, rearHeightMm: 1 },
  ],
  [
    "The tapered box's rear height must be 0 mm or more; it is -1.",
    { kind: 'taperedBox', lengthMm: 9, frontWidthMm: 2, frontHeightMm: 1, rearWidthMm: 0, rearHeightMm: -1 },
  ],
  [
    "The cone's front and rear diameter cannot both be 0.",
    { kind: 'frustum', lengthMm: 9, frontDiameterMm: 0, rearDiameterMm: 0 },
  ],
  ["The tube's bore, 6 mm, must be less than its outer diameter, 6 mm.", tube(6, 6)],
  ["The tube's bore must be 0 mm or more; it is -1.", tube(6, -1)],
  [
    "The capsule's length, 19 mm, must be at least its diameter, 20 mm.",
    { kind: 'capsule', lengthMm: 19, diameterMm: 20 },
  ],
  ["The prism's outline needs at least 3 corners; it has 2.", prism([0, 0], [1, 0])],
  [
    "Corner 2 of the prism's outline must be two numbers; it is 1,NaN.",
    prism([0, 0], [1, Number.NaN], [0, 1]),
  ],
  ["The prism's outline crosses or touches itself.", prism([0, 0], [2, 2], [2, 0], [0, 2])],
  ["The prism's outline crosses or touches itself.", prism([0, 0], [1, 0], [2, 0])],
  ['A loft needs at least 2 sections; this one has 1.', loft(ring)],
  ['Section 2 must be aft of section 1, at more than 0 mm; it is at 0 mm.', loft(ring, ring)],
  [
    "The loft's section 2 must have a roundness from 0 to 1; it is 1.2.",
    loft(ring, { ...ring, xMm: 9, roundness: 1.2 }),
  ],
  ["The loft's section 1's width must be 0 mm or more; it is -5.", loft({ ...ring, widthMm: -5 }, ring)],
  ["The loft's section 1's station must be a number; it is NaN.", loft({ ...ring, xMm: Number.NaN }, ring)],
  ['The loft encloses no volume.', loft({ ...ring, widthMm: 0 }, { ...ring, xMm: 9, widthMm: 0 })],
  ["The panel's span must be more than 0 mm; it is -1.", panel({ spanMm: -1 })],
  ["The panel's root and tip chord cannot both be 0.", panel({ rootChordMm: 0, tipChordMm: 0 })],
  ["The panel's tip twist must be a number; it is NaN.", panel({ tipTwistDeg: Number.NaN })],
  ["The panel's root thickness must be 0 or more; it is -0.1.", panel({ rootThickness: -0.1 })],
  ['The panel encloses no volume.', panel({ rootThickness: 0, tipThickness: 0 })],
  [
    "The panel's root and tip twist must differ by less than 90°; they differ by 180°.",
    panel({ rootTwistDeg: 90, tipTwistDeg: -90 }),
  ],
])('%s', (fault, shape) => {
  expect(shapeFault(shape)).toBe(fault);
});

/** What a field of a shape is called, by its own name: "frontWidthMm" is the front width. */
const fieldWords = (key: string) =>
  key === 'innerDiameterMm'
    ? 'bore'
    : key.replace(/(Mm|Deg)$/, '').replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
const nouns: Readonly<Record<string, string>> = { taperedBox: 'tapered box', frustum: 'cone' };

describe('each size that is none is words by the shape’s name and its own', () => {
  const fields = sampleShapes.flatMap((shape) =>
    Object.entries(shape).flatMap(([key, value]) =>
      typeof value === 'number' ? [[`${nameOf(shape)}’s ${fieldWords(key)}`, shape, key] as const] : [],
    ),
  );
  test.each(fields)('%s', (_, shape, key) => {
    const noun = nouns[shape.kind] ?? shape.kind;
    const of = (value: number) => shapeFault({ ...shape, [key]: value } as Shape);
    const words = `The ${noun}'s ${fieldWords(key)} must be`;
    expect(of(Number.NaN)).toMatch(words);
    expect(of(Number.POSITIVE_INFINITY)).toMatch(words);
    // What may point either way may be less than nothing; no size may.
    if (!/sweep|rise|Twist/.test(key)) expect(of(-1)).toMatch(new RegExp(`^${words}.*; it is -1\\.$`));
  });
  test('a tapered box without height, a loft’s centres', () => {
    const flat: Shape = {
      kind: 'taperedBox',
      lengthMm: 9,
      frontWidthMm: 1,
      frontHeightMm: 0,
      rearWidthMm: 1,
      rearHeightMm: 0,
    };
    expect(shapeFault(flat)).toBe("The tapered box's front and rear height cannot both be 0.");
    expect(shapeFault(loft({ ...ring, centreYMm: Number.NaN }, ring))).toMatch(/section 1's centre y must/);
    expect(shapeFault(loft(ring, { ...ring, xMm: 9, centreZMm: Number.NaN }))).toMatch(
      /section 2's centre z must/,
    );
    expect(shapeFault(loft({ ...ring, heightMm: -5 }, ring))).toMatch(
      /section 1's height must be 0 mm or more/,
    );
  });
});

describe('meshes', () => {
  const cube = tessellate(box);
  const changed = (change: Partial<Mesh>): Shape => ({ kind: 'mesh', ...cube, ...change });

  test.each<[string, Shape]>([
    ['A closed mesh has at least 4 triangles, this one has 0.', changed({ triangles: [] })],
    ['Vertex 0 of the mesh is not three numbers: NaN,0,0.', changed({ verticesMm: [[Number.NaN, 0, 0]] })],
    [
      'Triangle 0 names vertex 8; the mesh has vertices 0 to 7.',
      changed({ triangles: [[0, 1, 8], ...cube.triangles] }),
    ],
    ['Triangle 0 names a vertex twice: 0,1,1.', changed({ triangles: [[0, 1, 1], ...cube.triangles] })],
    [
      'The mesh encloses no volume.',
      changed({ verticesMm: cube.verticesMm.map(([x, y]) => [x, y, 0] as const) }),
    ],
    [
      'The mesh is inside out: its triangles face inwards.',
      changed({ triangles: cube.triangles.map(([a, b, c]) => [a, c, b] as const) }),
    ],
  ])('%s', (fault, shape) => {
    expect(shapeFault(shape)).toBe(fault);
  });

  test('a hole is found wherever it is', () => {
    cube.triangles.forEach((_, missing) => {
      const triangles = cube.triangles.filter((_, i) => i !== missing);
      expect(shapeFault(changed({ triangles }))).toMatch(
        /^The mesh is open: the edge \d–\d has a triangle on one side only\.$/,
      );
    });
  });

  test('one turned triangle is found wherever it is', () => {
    cube.triangles.forEach((_, turned) => {
      const triangles = cube.triangles.map(([a, b, c], i) =>
        i === turned ? ([a, c, b] as const) : ([a, b, c] as const),
      );
      expect(shapeFault(changed({ triangles }))).toContain('neighbours must run opposite ways');
    });
  });
});
