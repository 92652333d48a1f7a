import { BufferGeometry, type Matrix4, Mesh, type Object3D, Vector3 } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { OBJLoader } from 'three/examples/jsm/loaders/OBJLoader.js';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { objTriangles } from './objTriangles';
import { plainGlb } from './plainGlb';

export type MeshFormat = 'stl' | 'obj' | 'gltf';

/** Loose triangles, nine figures each, in the file's own unit and axes; or why there are none. */
export type MeshFile =
  | { readonly ok: true; readonly format: MeshFormat; readonly figures: Float64Array }
  | { readonly ok: false; readonly sentence: string };

/** Reads the triangles of an STL, OBJ or glTF file, by its name’s ending. Nothing is ever fetched for it. */
export async function readMeshFile(name: string, bytes: Uint8Array): Promise<MeshFile> {
  const ending = /\.([^.]+)$/.exec(name)?.[1]?.toLowerCase() ?? '';
  try {
    switch (ending) {
      case 'stl':
        return readStl(bytes);
      case 'obj':
        return readObj(bytes);
      case 'gltf':
      case 'glb':
        return await readGltf(bytes);
      default:
        return refused(
          `The name ends in “.${ending}”: expected a mesh as .stl, .obj, .glb or .gltf. A drawing of solids (STEP, IGES) must be saved as one of these first.`,
        );
    }
  } catch (error) {
    return refused(`The file is no sound ${ending.toUpperCase()}: ${whyOf(error)}`);
  }
}

/** What a loader says, without its own name; its stumbling over something that is not there says nothing to a person. */
function whyOf(error: unknown): string {
  if (error instanceof TypeError || error instanceof RangeError)
    return 'something that its description names is not in it.';
  const text = error instanceof Error ? error.message : String(error);
  return text.replace(/^THREE\.\w+: /, '').slice(0, 200);
}

const refused = (sentence: string): MeshFile => ({ ok: false, sentence });

/** Binary STL: 80 bytes, the count of triangles, then 50 bytes each. */
const stlHead = 84;
const stlEach = 50;

function readStl(bytes: Uint8Array): MeshFile {
  const said =
    bytes.length >= stlHead ? new DataView(bytes.buffer, bytes.byteOffset).getUint32(80, true) : -1;
  const isBinary = bytes.length === stlHead + stlEach * said;
  const text = isBinary ? '' : new TextDecoder().decode(bytes).toLowerCase();
  const facets = text.match(/\bendfacet\b/g)?.length ?? 0;
  if (!isBinary && (!text.trimStart().startsWith('solid') || (facets === 0 && text.includes('\0')))) {
    return refused(
      said < 0
        ? 'The file is no STL: it is too short for one.'
        : `The file is no whole STL: it says ${said} triangles, which take ${stlHead + stlEach * said} bytes, and has ${bytes.length}.`,
    );
  }
  // The loader looks for a count behind the head before it takes a file for text.
  const content = isBinary ? bytes : new TextEncoder().encode(text);
  const copy = new Uint8Array(Math.max(stlHead, content.length)).fill(0x20);
  copy.set(content);
  const figures = figuresOf(new STLLoader().parse(copy.buffer));
  if (!isBinary && figures.length !== 9 * facets)
    return refused(
      `A facet of the STL has not three corners: ${facets} facets came with ${figures.length / 3} corners.`,
    );
  return { ok: true, format: 'stl', figures };
}

function readObj(bytes: Uint8Array): MeshFile {
  const text = new TextDecoder().decode(bytes);
  if (!/^\s*f\s/m.test(text))
    return refused('There is no face in the OBJ file (no line that begins with f).');
  return { ok: true, format: 'obj', figures: joined(new OBJLoader().parse(objTriangles(text))) };
}

async function readGltf(bytes: Uint8Array): Promise<MeshFile> {
  const plain = plainGlb(bytes);
  if (!plain.ok) return refused(plain.sentence);
  const { scene } = await new GLTFLoader().parseAsync(plain.glb, '');
  return { ok: true, format: 'gltf', figures: joined(scene) };
}

/** The triangles of everything under an object, where it stands. */
function joined(root: Object3D): Float64Array {
  root.updateMatrixWorld(true);
  const all: Float64Array[] = [];
  root.traverse((object) => {
    if (object instanceof Mesh && object.geometry instanceof BufferGeometry)
      all.push(figuresOf(object.geometry, object.matrixWorld));
  });
  const figures = new Float64Array(all.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const each of all) {
    figures.set(each, at);
    at += each.length;
  }
  return figures;
}

function figuresOf(geometry: BufferGeometry, stands?: Matrix4): Float64Array {
  const position = geometry.getAttribute('position');
  if (!position) return new Float64Array();
  const index = geometry.getIndex();
  const corners = index ? index.count : position.count;
  const figures = new Float64Array(3 * corners);
  const point = new Vector3();
  for (let i = 0; i < corners; i += 1) {
    point.fromBufferAttribute(position, index ? index.getX(i) : i);
    if (stands) point.applyMatrix4(stands);
    point.toArray(figures, 3 * i);
  }
  return figures;
}
