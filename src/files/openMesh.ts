import type { Bench } from '../store/bench';
import type { FilePickers } from './filePickers';

const ENDINGS = ['.stl', '.obj', '.glb', '.gltf'] as const;

export const isMeshName = (name: string): boolean =>
  ENDINGS.some((ending) => name.toLowerCase().endsWith(ending));

/** Lets a person choose a mesh; null when they thought better of it. */
export const chooseMesh = (pickers: FilePickers): Promise<File | null> =>
  pickers.chooseFile(ENDINGS.join(','));

/** The largest mesh file that is read, bytes: a text of 100 000 triangles takes some 25 MB. */
const LARGEST_MESH = 48 * 1024 * 1024;

/** Hands a mesh file to the bench, which reads and checks it on this machine only. */
export async function openMesh(bench: Bench, file: File): Promise<void> {
  if (file.size > LARGEST_MESH) {
    const mb = (bytes: number) => Math.ceil(bytes / 1024 / 1024);
    throw new Error(
      `${file.name} is too large: expected at most ${mb(LARGEST_MESH)} MB, got ${mb(file.size)} MB`,
    );
  }
  bench.mesh.open(file.name, new Uint8Array(await file.arrayBuffer()));
}
