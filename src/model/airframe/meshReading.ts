import type { Vec3 } from '../../engine/geometry/types';
import type { SurfaceProperties, VolumeProperties } from '../../engine/mass/types';
import type { MeshUnit, MeshWay } from '../../engine/mesh/fileFrame';
import type { MeshVerdict } from '../../engine/mesh/soundMesh';

/** How a mesh file's figures are taken; null is for the first guess. */
export interface MeshAs {
  readonly unit: MeshUnit | null;
  readonly nose: MeshWay | null;
  readonly up: MeshWay | null;
}

/** What the reader of mesh files is asked: a file as it is, and how its figures are to be taken. */
export interface MeshAsk extends MeshAs {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly mostTriangles: number;
}

/** A mesh as read, as it would stand in the aircraft's frame. */
export interface ReadMesh {
  readonly ok: true;
  readonly unit: MeshUnit;
  readonly nose: MeshWay;
  readonly up: MeshWay;
  readonly triangles: number;
  /** Length, width and height over all, mm. */
  readonly sizeMm: Vec3;
  /** The box around it where the file's own origin is the datum's, mm. */
  readonly minMm: Vec3;
  readonly maxMm: Vec3;
  /** Loose triangles to draw it by, nine figures each, mm; not all of them where there are very many. */
  readonly figuresMm: Float32Array;
  readonly verdict: MeshVerdict;
  /** Of a sound mesh. */
  readonly volume: VolumeProperties | null;
  readonly surface: SurfaceProperties | null;
}

/** A mesh out of a file, or a sentence that says why there is none. */
export type MeshReading = ReadMesh | { readonly ok: false; readonly sentence: string };
