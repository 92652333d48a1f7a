/** A binary glTF of shapes alone, or why there is none. */
export type PlainGlb =
  | { readonly ok: true; readonly glb: ArrayBuffer }
  | { readonly ok: false; readonly sentence: string };

type Json = Record<string, unknown>;

/** "glTF", "JSON" and "BIN\0", little-endian (glTF 2.0 specification, section 4.4). */
const MAGIC = 0x46546c67;
const JSON_CHUNK = 0x4e4f534a;
const BIN_CHUNK = 0x004e4942;

/**
 * A glTF file, text or binary, with all its figures in one buffer and without anything but shapes and where they stand:
 * what is left names no other file, so that reading it fetches nothing.
 */
export function plainGlb(bytes: Uint8Array): PlainGlb {
  const parted = partsOf(bytes);
  if ('sentence' in parted) return { ok: false, sentence: parted.sentence };
  const { json, bin } = parted;
  const needed = listOf(json.extensionsRequired).filter(
    (name) => !/^KHR_(mesh_quantization|materials_|texture_|lights_)/.test(String(name)),
  );
  if (needed.length > 0)
    return {
      ok: false,
      sentence: `The glTF needs ${needed.join(', ')}, which is not read. Save it without compression and extensions.`,
    };
  const buffers: Uint8Array[] = [];
  for (const [i, buffer] of records(json.buffers).entries()) {
    const { uri } = buffer;
    if (uri === undefined && i === 0 && bin) buffers.push(bin);
    else if (typeof uri === 'string' && /^data:[^,]*;base64,/.test(uri)) buffers.push(fromBase64(uri));
    else {
      const other = typeof uri === 'string' ? `“${uri.slice(0, 60)}”` : 'another file';
      return {
        ok: false,
        sentence: `The glTF keeps its figures in ${other}. Save it as one file: GLB, or glTF with its data embedded.`,
      };
    }
  }
  return { ok: true, glb: glbOf(shapesOnly(json), buffers) };
}

function partsOf(bytes: Uint8Array): { json: Json; bin: Uint8Array | null } | { sentence: string } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 12 || view.getUint32(0, true) !== MAGIC) return { json: jsonOf(bytes), bin: null };
  if (view.getUint32(4, true) !== 2)
    return { sentence: `Expected version 2 of glTF, got version ${view.getUint32(4, true)}.` };
  let json: Json | null = null;
  let bin: Uint8Array | null = null;
  for (let at = 12; at + 8 <= bytes.length; ) {
    const [length, kind] = [view.getUint32(at, true), view.getUint32(at + 4, true)];
    if (at + 8 + length > bytes.length) return { sentence: 'The GLB file is cut short.' };
    const chunk = bytes.subarray(at + 8, at + 8 + length);
    if (kind === JSON_CHUNK) json ??= jsonOf(chunk);
    else if (kind === BIN_CHUNK) bin ??= chunk;
    at += 8 + length;
  }
  return json ? { json, bin } : { sentence: 'The GLB file has no description of its shapes.' };
}

function jsonOf(bytes: Uint8Array): Json {
  const json: unknown = JSON.parse(new TextDecoder().decode(bytes));
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    throw new Error('it holds no object.');
  return json as Json;
}

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
const records = (value: unknown): Json[] =>
  listOf(value).map((entry) => (typeof entry === 'object' && entry !== null ? (entry as Json) : {}));

function fromBase64(uri: string): Uint8Array {
  const text = atob(uri.slice(uri.indexOf(',') + 1));
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}

/** Without looks, movement and cameras. */
function shapesOnly(json: Json): Json {
  const { materials, textures, images, samplers, animations, skins, cameras, extensions, ...rest } = json;
  const meshes = records(json.meshes).map((mesh) => ({
    ...mesh,
    primitives: records(mesh.primitives).map(({ material, targets, extensions: more, ...shape }) => shape),
  }));
  const nodes = records(json.nodes).map(({ skin, camera, extensions: more, ...node }) => node);
  return {
    ...rest,
    extensionsUsed: [],
    extensionsRequired: listOf(json.extensionsRequired).filter((name) => name === 'KHR_mesh_quantization'),
    meshes,
    nodes,
  };
}

const fours = (length: number): number => Math.ceil(length / 4) * 4;

/** All buffers one behind the other, and the views of them moved along. */
function glbOf(json: Json, buffers: readonly Uint8Array[]): ArrayBuffer {
  const from: number[] = [];
  let size = 0;
  for (const { length } of buffers) {
    from.push(size);
    size += fours(length);
  }
  const bufferViews = records(json.bufferViews).map((view) => ({
    ...view,
    buffer: 0,
    byteOffset: Number(view.byteOffset ?? 0) + (from[Number(view.buffer)] ?? 0),
  }));
  const description = { ...json, bufferViews, buffers: size > 0 ? [{ byteLength: size }] : [] };
  const text = new TextEncoder().encode(JSON.stringify(description));
  const head = fours(text.length);
  const glb = new Uint8Array(20 + head + (size > 0 ? 8 + size : 0)).fill(0x20, 20, 20 + head);
  const view = new DataView(glb.buffer);
  const put = (at: number, figures: readonly number[]) => {
    for (const [i, figure] of figures.entries()) view.setUint32(at + 4 * i, figure, true);
  };
  put(0, [MAGIC, 2, glb.length, head, JSON_CHUNK]);
  glb.set(text, 20);
  if (size > 0) put(20 + head, [size, BIN_CHUNK]);
  for (const [i, buffer] of buffers.entries()) glb.set(buffer, 28 + head + from[i]!);
  return glb.buffer;
}
