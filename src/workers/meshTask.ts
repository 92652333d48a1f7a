import type { Vec3 } from '../engine/geometry/types';
import type { SurfaceProperties, VolumeProperties } from '../engine/mass/types';
import type { MeshUnit, MeshWay } from '../engine/mesh/fileFrame';
import type { MeshVerdict } from '../engine/mesh/soundMesh';

/** What the worker for meshes is asked: a file as it is, and how its figures are to be taken; null is for a guess. */
export interface MeshTask {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly unit: MeshUnit | null;
  readonly nose: MeshWay | null;
  readonly up: MeshWay | null;
  readonly mostTriangles: number;
}

/** A mesh out of a file, as it would stand in the aircraft's frame, or a sentence that says why there is none. */
export type MeshAnswer =
  | { readonly ok: false; readonly sentence: string }
  | {
      readonly ok: true;
      readonly unit: MeshUnit;
      readonly nose: MeshWay;
      readonly up: MeshWay;
      readonly triangles: number;
      /** Length, width and height over all, mm, in the aircraft's frame. */
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
    };
