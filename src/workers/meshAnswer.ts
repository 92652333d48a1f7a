import { turn } from '../engine/geometry/rotation';
import type { Vec3 } from '../engine/geometry/types';
import { meshProperties, meshSurface } from '../engine/mass/mesh';
import { fileSpan, fileToAircraft, firstGuess, inAircraft, mmPerUnit } from '../engine/mesh/fileFrame';
import { soundMesh } from '../engine/mesh/soundMesh';
import { readMeshFile } from './meshFile';
import type { MeshAnswer, MeshTask } from './meshTask';

/** Reads a mesh file, sets it in the aircraft's frame as asked or as it seems likely, and checks it. */
export async function meshAnswer(task: MeshTask): Promise<MeshAnswer> {
  const file = await readMeshFile(task.name, task.bytes);
  if (!file.ok) return file;
  const span = fileSpan(file.figures);
  const guess = firstGuess(file.format, span);
  const unit = task.unit ?? guess.unit;
  const nose = task.nose ?? guess.nose;
  const up = task.up ?? guess.up;
  const size = turn(fileToAircraft(nose, up), span);
  const sizeMm = size.map((side) => Math.abs(side) * mmPerUnit[unit]) as unknown as Vec3;
  const verdict = soundMesh(inAircraft(file.figures, unit, nose, up), task.mostTriangles);
  return {
    ok: true,
    unit,
    nose,
    up,
    triangles: Math.floor(file.figures.length / 9),
    sizeMm,
    verdict,
    volume: verdict.ok ? meshProperties(verdict.mesh) : null,
    surface: verdict.ok ? meshSurface(verdict.mesh) : null,
  };
}
