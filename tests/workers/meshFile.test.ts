import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Mesh } from '../../src/engine/mass/types';
import { meshAnswer } from '../../src/workers/meshAnswer';
import { readMeshFile } from '../../src/workers/meshFile';
import { brick } from '../engine/mesh/solids';
import { randomFrom } from '../randomFrom';
import { seed } from '../seed';

// three's loaders say in the console what the bench says in a sentence.
beforeEach(() => {
  vi.spyOn(console, 'error').mockImplementation(() => {});
  vi.spyOn(console, 'warn').mockImplementation(() => {});
});
afterEach(() => {
  vi.restoreAllMocks();
});

/** The formats written out here by their published descriptions, so that no reader is tested on its own writing. */
const text = (content: string) => new TextEncoder().encode(content);
const block = brick([0, 0, 0], [300, 20, 10]);

/** Binary STL: 80 bytes of head, a count, and for each triangle a normal, three corners and two bytes. */
function binaryStl(mesh: Mesh): Uint8Array {
  const view = new DataView(new ArrayBuffer(84 + 50 * mesh.triangles.length));
  view.setUint32(80, mesh.triangles.length, true);
  for (const [t, triangle] of mesh.triangles.entries())
    for (const [k, i] of triangle.entries())
      for (const axis of [0, 1, 2] as const)
        view.setFloat32(84 + 50 * t + 12 + 12 * k + 4 * axis, mesh.verticesMm[i]![axis], true);
  return new Uint8Array(view.buffer);
}

const textStl = ({ verticesMm, triangles }: Mesh) =>
  text(
    `solid block\n${triangles
      .map(
        (t) =>
          `facet normal 0 0 0\nouter loop\n${t.map((i) => `vertex ${verticesMm[i]!.join(' ')}\n`).join('')}endloop\nendfacet\n`,
      )
      .join('')}endsolid block\n`,
  );

const obj = ({ verticesMm, triangles }: Mesh) =>
  text(
    `# block\n${verticesMm.map((v) => `v ${v.join(' ')}\n`).join('')}${triangles.map((t) => `f ${t.map((i) => `${i + 1}//`).join(' ')}\n`).join('')}`,
  );

/** glTF 2.0 with its figures as a data URI: float corners, then short indices. */
function gltf({ verticesMm, triangles }: Mesh, uri?: string, more: object = {}): Uint8Array {
  const figures = Float32Array.from(verticesMm.flat().map((mm) => mm / 1000));
  const corners = Uint16Array.from(triangles.flat());
  const bytes = new Uint8Array(figures.byteLength + corners.byteLength);
  bytes.set(new Uint8Array(figures.buffer));
  bytes.set(new Uint8Array(corners.buffer), figures.byteLength);
  const data = `data:application/octet-stream;base64,${Buffer.from(bytes).toString('base64')}`;
  return text(
    JSON.stringify({
      asset: { version: '2.0' },
      scene: 0,
      scenes: [{ nodes: [0] }],
      nodes: [{ mesh: 0, scale: [2, 1, 1], translation: [5, 0, 0] }],
      meshes: [{ primitives: [{ attributes: { POSITION: 0 }, indices: 1, material: 0 }] }],
      materials: [{ pbrMetallicRoughness: { baseColorTexture: { index: 0 } } }],
      textures: [{ source: 0 }],
      images: [{ uri: 'https://example.com/never-asked-for.png' }],
      accessors: [
        {
          bufferView: 0,
          componentType: 5126,
          count: verticesMm.length,
          type: 'VEC3',
          min: [0, 0, 0],
          max: [1, 1, 1],
        },
        { bufferView: 1, componentType: 5123, count: corners.length, type: 'SCALAR' },
      ],
      bufferViews: [
        { buffer: 0, byteOffset: 0, byteLength: figures.byteLength },
        { buffer: 0, byteOffset: figures.byteLength, byteLength: corners.byteLength },
      ],
      buffers: [{ byteLength: bytes.length, uri: uri ?? data }],
      ...more,
    }),
  );
}

const files: readonly (readonly [string, Uint8Array])[] = [
  ['block.stl', binaryStl(block)],
  ['block.STL', textStl(block)],
  ['block.obj', obj(block)],
  ['block.gltf', gltf(block)],
];
const ask = (name: string, bytes: Uint8Array, as: object = {}) =>
  meshAnswer({ name, bytes, unit: null, nose: null, up: null, mostTriangles: 1000, ...as });

describe('a block of 300 × 20 × 10 mm', () => {
  test.each(files.slice(0, 3))('%s, as millimetres', async (name, bytes) => {
    const answer = await ask(name, bytes);
    if (!answer.ok) throw new Error(answer.sentence);
    expect(answer).toMatchObject({ unit: 'mm', nose: '-x', up: '+z', triangles: 12, sizeMm: [300, 20, 10] });
    expect(answer.volume?.volumeMm3).toBeCloseTo(60_000, 6);
  });

  test('glTF in metres, y up and z forward, where its node stands', async () => {
    const answer = await ask('block.gltf', gltf(block));
    if (!answer.ok) throw new Error(answer.sentence);
    // Its length of 300 mm, twice as long by the node, lies across; its width of 20 mm is up, its height along.
    expect(answer).toMatchObject({ unit: 'm', nose: '+z', up: '+y' });
    for (const [i, side] of [10, 600, 20].entries()) expect(answer.sizeMm[i]).toBeCloseTo(side, 3);
    expect(answer.volume?.volumeMm3).toBeCloseTo(120_000, 1);
  });

  test('in inches, nose up: turned and never mirrored', async () => {
    const answer = await ask('block.stl', binaryStl(block), { unit: 'in', nose: '+z', up: '+x' });
    if (!answer.ok || !answer.verdict.ok) throw new Error('not read');
    for (const [i, side] of [10, 20, 300].entries()) expect(answer.sizeMm[i]).toBeCloseTo(side * 25.4, 6);
    expect(answer.verdict.findings.turned).toBe(0);
    expect(answer.volume!.volumeMm3).toBeCloseTo(60_000 * 25.4 ** 3, 0);
  });
});

/** An L of 30 × 40 mm with arms 10 mm wide, 10 mm thick: each face as one polygon, begun at a corner of its outline. */
function angle(first: number, backwards: boolean): Uint8Array {
  const outline = [
    [0, 0],
    [30, 0],
    [30, 10],
    [10, 10],
    [10, 40],
    [0, 40],
  ];
  const corners = [...outline.slice(first), ...outline.slice(0, first)];
  const sides = corners.map((_, i) => [i, (i + 1) % 6, ((i + 1) % 6) + 6, i + 6]);
  const faces = [[5, 4, 3, 2, 1, 0], [6, 7, 8, 9, 10, 11], ...sides];
  const number = (i: number) => (backwards ? i - 12 : i + 1);
  return text(
    [
      ...[0, 10].flatMap((z) => corners.map(([x, y]) => `v ${x} ${y} ${z}`)),
      ...faces.map((face) => `f ${face.map((i) => `${number(i)}//`).join(' ')}`),
    ].join('\n'),
  );
}

test('an OBJ face of six corners that is not convex, from whatever corner and counted either way', async () => {
  for (let first = 0; first < 6; first += 1)
    for (const backwards of [false, true]) {
      const answer = await ask('angle.obj', angle(first, backwards), { unit: 'mm', nose: '-x', up: '+z' });
      if (!answer.ok) throw new Error(answer.sentence);
      // By hand: 600 mm² and 140 mm round.
      expect(answer.volume?.volumeMm3).toBeCloseTo(6000, 6);
      expect(answer.surface?.areaMm2).toBeCloseTo(2 * 600 + 140 * 10, 6);
    }
});

test('a text STL in capitals', async () => {
  const capitals = text(new TextDecoder().decode(textStl(block)).toUpperCase());
  const answer = await ask('BLOCK.STL', capitals);
  expect(answer).toMatchObject({ ok: true, triangles: 12, sizeMm: [300, 20, 10] });
});

describe('what is refused says why', () => {
  test.each([
    [
      'block.stl',
      new Uint8Array([...text('solid'), ...binaryStl(block).slice(5), 0, 0]),
      'it says 12 triangles',
    ],
    ['block.gltf', gltf(block, undefined, { accessors: [] }), 'is not in it'],
    ['wing.step', text('ISO-10303-21;'), 'expected a mesh as .stl'],
    ['block.stl', binaryStl(block).slice(0, 500), 'it says 12 triangles'],
    ['block.stl', text('hello'), 'too short'],
    [
      'block.stl',
      text('solid x\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nendloop\nendfacet\n'),
      'three corners',
    ],
    ['block.obj', text('v 0 0 0\n'), 'no face'],
    ['block.gltf', gltf(block, 'block.bin'), '“block.bin”'],
    ['block.gltf', gltf(block, 'https://example.com/block.bin'), 'Save it as one file'],
    [
      'block.gltf',
      gltf(block, undefined, { extensionsRequired: ['KHR_draco_mesh_compression'] }),
      'KHR_draco',
    ],
    ['block.gltf', text('[]'), 'no sound GLTF'],
    ['block.glb', text('glTF'), 'no sound GLB'],
  ])('%s', async (name, bytes, words) => {
    const file = await readMeshFile(name, bytes);
    expect(file.ok).toBe(false);
    if (!file.ok) expect(file.sentence).toContain(words);
  });

  test('an OBJ face that names a corner which is not there', async () => {
    const answer = await ask('a.obj', text('v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 9\n'));
    expect(answer).toMatchObject({ ok: true, verdict: { ok: false } });
  });
});

test('spoilt files never do more than say so', async () => {
  const random = randomFrom(seed);
  for (let run = 0; run < 160; run += 1) {
    const [name, whole] = files[run % files.length]!;
    const bytes = whole.slice(0, random() < 0.3 ? Math.floor(random() * whole.length) : whole.length);
    for (let k = 0; k < 1 + random() * 6; k += 1) bytes[Math.floor(random() * bytes.length)] = random() * 256;
    const answer = await ask(name, bytes);
    if (!answer.ok) expect(answer.sentence.length).toBeGreaterThan(10);
    else if (answer.verdict.ok) expect(answer.volume!.volumeMm3).toBeGreaterThan(0);
    else expect(answer.verdict.sentence.length).toBeGreaterThan(10);
  }
});
