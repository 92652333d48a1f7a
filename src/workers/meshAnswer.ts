import { turn } from '../engine/geometry/rotation';
import type { Vec3 } from '../engine/geometry/types';
import { meshProperties, meshSurface } from '../engine/mass/mesh';
import { fileSpan, fileToAircraft, firstGuess, inAircraft, mmPerUnit } from '../engine/mesh/fileFrame';
import { soundMesh } from '../engine/mesh/soundMesh';
import type { MeshAsk, MeshReading } from '../model/airframe/meshReading';
import { readMeshFile } from './meshFile';

/** More triangles than this are not sent to be drawn. */
const mostDrawn = 100_000;

function corner(figures: Float64Array, pick: (a: number, b: number) => number): Vec3 {
  return [0, 1, 2].map((axis) => {
    let far = figures[axis] ?? 0;
    for (let i = axis; i < figures.length; i += 3) far = pick(far, figures[i]!);
    return far;
  }) as unknown as Vec3;
}

/** Reads a mesh file, sets it in the aircraft's frame as asked or as it seems likely, and checks it. */
export async function meshAnswer(task: MeshAsk): Promise<MeshReading> {
  const file = await readMeshFile(task.name, task.bytes);
  if (!file.ok) return file;
  const span = fileSpan(file.figures);
  const guess = firstGuess(file.format, span);
  const unit = task.unit ?? guess.unit;
  const nose = task.nose ?? guess.nose;
  const up = task.up ?? guess.up;
  const size = turn(fileToAircraft(nose, up), span);
  const sizeMm = size.map((side) => Math.abs(side) * mmPerUnit[unit]) as unknown as Vec3;
  const figures = inAircraft(file.figures, unit, nose, up);
  const verdict = soundMesh(figures, task.mostTriangles);
  const [minMm, maxMm] = [corner(figures, Math.min), corner(figures, Math.max)];
  return {
    ok: true,
    unit,
    nose,
    up,
    triangles: Math.floor(file.figures.length / 9),
    sizeMm,
    minMm,
    maxMm,
    figuresMm: Float32Array.from(figures.subarray(0, 9 * mostDrawn)),
    verdict,
    volume: verdict.ok ? meshProperties(verdict.mesh) : null,
    surface: verdict.ok ? meshSurface(verdict.mesh) : null,
  };
}
